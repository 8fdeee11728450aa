import type { Vec2 } from '../../frame/index.js';
import { type Words, wordsOf } from '../../shop/index.js';
import { letters, SMALL, stroke } from './draw.js';
import type { Stroke, Table } from './sheet.js';
import { textWidth } from './text-width.js';
import { widestWord, wrappedText } from './wrapped-text.js';

/** From row to row inside a cell, and around its text, mm. */
const LEADING = 3.9;
const PAD_X = 1.2;
const PAD_Y = 1.2;

/** A table whose cells are broken to fit its columns. */
export interface WrappedTable {
  readonly widths: readonly number[];
  readonly rows: readonly WrappedRow[];
}

export interface WrappedRow {
  readonly height: number;
  /** As given, and as broken. */
  readonly cells: readonly string[];
  readonly lines: readonly (readonly string[])[];
  readonly bold: readonly boolean[];
}

/** Breaks a table so that it is no wider than a room; its first row and strong words are printed bold, and columns that say nothing are left out. */
export function wrappedTable(rows: readonly (readonly Words[])[], room: number): WrappedTable {
  const said = (rows[0] ?? []).map((_, c) => rows.length === 1 || rows.slice(1).some((row) => row[c] !== ''));
  const cells = rows.map((row, r) => row.filter((_, c) => said[c]).map((cell) => marked(cell, r === 0)));
  const widths = widthsFor(cells, room);
  return {
    widths,
    rows: cells.map((row): WrappedRow => {
      const lines = row.map(({ text, bold }, c) =>
        wrappedText(text, widths[c]! - 2 * PAD_X + 1e-6, SMALL, bold),
      );
      const most = Math.max(1, ...lines.map((one) => one.length));
      return {
        height: (most - 1) * LEADING + SMALL + 2 * PAD_Y,
        cells: row.map(({ text }) => text),
        lines,
        bold: row.map(({ bold }) => bold),
      };
    }),
  };
}

interface Cell {
  readonly text: string;
  readonly bold: boolean;
}

const marked = (cell: Words, head: boolean): Cell => ({
  text: wordsOf(cell),
  bold: head || typeof cell !== 'string',
});

/** Each column as wide as it wants where all fit; else no narrower than its widest word, and the wordier the wider. */
function widthsFor(rows: readonly (readonly Cell[])[], room: number): readonly number[] {
  const columns = (rows[0] ?? []).map((_, c) => rows.map((row) => row[c] ?? { text: '', bold: false }));
  const padded = (mm: number) => mm + 2 * PAD_X + 0.1;
  const wanted = columns.map((cells) =>
    padded(Math.max(...cells.map(({ text, bold }) => textWidth(text, SMALL, bold)))),
  );
  const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);
  if (sum(wanted) <= room) return wanted;
  const least = columns.map((cells) =>
    padded(Math.max(...cells.map(({ text, bold }) => widestWord(text, SMALL, bold)))),
  );
  if (sum(least) >= room) return least.map((width) => (width * room) / sum(least));
  // as many rows of words in one column as in another: found by halving
  const at = (lines: number) => wanted.map((width, c) => Math.max(least[c]!, Math.min(width, width / lines)));
  let [few, many] = [1, 100];
  for (let i = 0; i < 40; i += 1) {
    const middle = (few + many) / 2;
    if (sum(at(middle)) > room) few = middle;
    else many = middle;
  }
  return at(many);
}

/** The rows of a broken table as one ruled table; the first is its head. */
export function drawnTable(at: Vec2, rows: readonly WrappedRow[], widths: readonly number[]): Table {
  const lefts = [at[0]];
  for (const width of widths) lefts.push(lefts.at(-1)! + width);
  const tops = [at[1]];
  for (const { height } of rows) tops.push(tops.at(-1)! - height);
  const [right, bottom] = [lefts.at(-1)!, tops.at(-1)!];
  const parts: Stroke[] = [
    ...lefts.map((x) => stroke('table', [x, at[1]], [x, bottom])),
    ...tops.map((y, i) => stroke(i === 1 ? 'visible' : 'table', [at[0], y], [right, y])),
    ...rows.flatMap(({ lines, bold }, r) =>
      lines.flatMap((cell, c) =>
        cell.flatMap((text, i) =>
          text === ''
            ? []
            : [
                letters(
                  [lefts[c]! + PAD_X, tops[r]! - PAD_Y - SMALL - i * LEADING],
                  text,
                  bold[c] ? { bold: true } : {},
                ),
              ],
        ),
      ),
    ),
  ];
  return {
    kind: 'table',
    at,
    widths,
    rowHeight: rows[0]?.height ?? 0,
    rows: rows.map(({ cells }) => cells),
    parts,
  };
}

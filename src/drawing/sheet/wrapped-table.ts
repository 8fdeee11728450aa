import type { Vec2 } from '../../frame/index.js';
import { type Words, wordsOf } from '../../shop/index.js';
import { BODY, letters, stroke } from './draw.js';
import type { Stroke, Table, Tag } from './sheet.js';
import { textWidth } from './text-width.js';
import { widestWord, wrappedText } from './wrapped-text.js';

/** From row to row inside a cell, and around its text, mm. */
const LEADING = 3.3;
const PAD_X = 1.2;
const PAD_Y = 0.8;

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
        wrappedText(text, widths[c]! - 2 * PAD_X + 1e-6, BODY, bold),
      );
      const most = Math.max(1, ...lines.map((one) => one.length));
      return {
        height: (most - 1) * LEADING + BODY + 2 * PAD_Y,
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

/** Columns are widened by this much at a time, mm. */
const STEP = 2;

/** Each column as wide as it wants where all fit; else no narrower than its widest word, and room goes where it saves most rows of letters. */
function widthsFor(rows: readonly (readonly Cell[])[], room: number): readonly number[] {
  const columns = (rows[0] ?? []).map((_, c) => rows.map((row) => row[c] ?? { text: '', bold: false }));
  const padded = (mm: number) => mm + 2 * PAD_X + 0.1;
  const wanted = columns.map((cells) =>
    padded(Math.max(...cells.map(({ text, bold }) => textWidth(text, BODY, bold)))),
  );
  const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);
  if (sum(wanted) <= room) return wanted;
  const least = columns.map((cells) =>
    padded(Math.max(...cells.map(({ text, bold }) => widestWord(text, BODY, bold)))),
  );
  if (sum(least) >= room) return least.map((width) => (width * room) / sum(least));
  const words = columns.map((cells) =>
    cells.map(({ text, bold }) => text.split(' ').map((word) => textWidth(word, BODY, bold))),
  );
  const known = new Map<string, readonly number[]>();
  const linesIn = (c: number, width: number): readonly number[] => {
    const key = `${c} ${width}`;
    const found = known.get(key) ?? words[c]!.map((cell) => lineCount(cell, width - 2 * PAD_X));
    known.set(key, found);
    return found;
  };
  const widths = [...least];
  for (;;) {
    const lines = widths.map((width, c) => linesIn(c, width));
    const left = room - sum(widths);
    // what a wider column saves, for each mm it takes; a few steps ahead, for a word needs its whole width
    let best: { readonly c: number; readonly width: number; readonly gain: number } | undefined;
    for (let c = 0; c < widths.length; c += 1) {
      const others = rows.map((_, r) => sum(lines.map((own, i) => (i === c ? 0 : own[r]! ** EVEN))));
      const high = (own: readonly number[]) =>
        sum(own.map((count, r) => (others[r]! + count ** EVEN) ** (1 / EVEN)));
      const now = high(lines[c]!);
      for (let more = STEP; more <= left && more <= MOST_STEP && widths[c]! < wanted[c]!; more += STEP) {
        const width = Math.min(widths[c]! + more, wanted[c]!);
        const gain = (now - high(linesIn(c, width))) / more;
        if (gain > (best?.gain ?? 1e-9)) best = { c, width, gain };
      }
    }
    if (!best)
      return widths.map((width, c) => width + (left * (wanted[c]! - width)) / (sum(wanted) - sum(widths)));
    widths[best.c] = best.width;
  }
}

const MOST_STEP = 40;

/** A row is nearly as high as its highest cell, and a little higher for every other: so several high cells shrink together. */
const EVEN = 6;

/** Rows of letters that words take, as they are broken by {@link wrappedText}. */
function lineCount(words: readonly number[], width: number): number {
  const space = textWidth(' ', BODY);
  let lines = 1;
  let used = -space;
  for (const word of words) {
    if (used + space + word > width && used > 0) {
      lines += 1;
      used = word;
    } else used += space + word;
  }
  return lines;
}

/** The rows of a broken table as one ruled table; a first row that is bold throughout is its head. */
export function drawnTable(at: Vec2, rows: readonly WrappedRow[], widths: readonly number[]): Table {
  const lefts = [at[0]];
  for (const width of widths) lefts.push(lefts.at(-1)! + width);
  const tops = [at[1]];
  for (const { height } of rows) tops.push(tops.at(-1)! - height);
  const [right, bottom] = [lefts.at(-1)!, tops.at(-1)!];
  const headed = rows[0]?.bold.every((one) => one);
  const parts: Stroke[] = [
    ...lefts.map((x) => stroke('table', [x, at[1]], [x, bottom])),
    ...tops.map((y, i) => stroke(i === 1 && headed ? 'visible' : 'table', [at[0], y], [right, y])),
    ...rows.flatMap(({ lines, bold }, r) =>
      lines.flatMap((cell, c) => {
        const tag = cellTag(r, c, bold, r === 0 && headed === true);
        return cell.flatMap((text, i) =>
          text === ''
            ? []
            : [
                letters([lefts[c]! + PAD_X, tops[r]! - PAD_Y - BODY - i * LEADING], text, {
                  height: BODY,
                  ...(bold[c] ? { bold: true } : {}),
                  tag,
                }),
              ],
        );
      }),
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

const cellTag = (row: number, column: number, bold: readonly boolean[], head: boolean): Tag => ({
  role: 'cell',
  row,
  column,
  ...(head ? { heads: 'Column' as const } : column === 0 && bold[0] ? { heads: 'Row' as const } : {}),
});

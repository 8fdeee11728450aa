import type { Vec2 } from '../../frame/index.js';
import { letters, SMALL, stroke } from './draw.js';
import type { Stroke, Table } from './sheet.js';
import { fittedText, textWidth } from './text-width.js';

export const ROW_HEIGHT = 5;

const PADDING = 1.2;

/** Widths that hold every text of a table, mm. */
export const columnWidths = (rows: readonly (readonly string[])[]): readonly number[] =>
  (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => textWidth(row[column] ?? '', SMALL) + 2 * PADDING)),
  );

/**
 * A ruled table; the first row is its head.
 *
 * @param at upper left corner, mm
 * @param widths of the columns; texts that are wider are cut
 */
export function tableAt(
  at: Vec2,
  rows: readonly (readonly string[])[],
  widths: readonly number[] = columnWidths(rows),
): Table {
  const edges = [at[0]];
  for (const width of widths) edges.push(edges.at(-1)! + width);
  const bottom = at[1] - rows.length * ROW_HEIGHT;
  const parts: Stroke[] = [
    ...edges.map((x) => stroke('table', [x, at[1]], [x, bottom])),
    ...[...rows.keys(), rows.length].map((i) =>
      stroke(
        i === 1 ? 'visible' : 'table',
        [edges[0]!, at[1] - i * ROW_HEIGHT],
        [edges.at(-1)!, at[1] - i * ROW_HEIGHT],
      ),
    ),
    ...rows.flatMap((row, r) =>
      row.flatMap((cell, c) => {
        if (cell === '') return [];
        const base: Vec2 = [edges[c]! + PADDING, at[1] - (r + 1) * ROW_HEIGHT + (ROW_HEIGHT - SMALL) / 2];
        const room = widths[c]! - 2 * PADDING + 1e-6;
        return [letters(base, fittedText(cell, room, [SMALL]).text)];
      }),
    ),
  ];
  return { kind: 'table', at, widths, rowHeight: ROW_HEIGHT, rows, parts };
}

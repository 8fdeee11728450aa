import type { Cut, LaidStock, Outcome, StockLayout } from '../../shop/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { bareSize, type DrawingUnits } from '../sheet/index.js';
import { type CutPicture, cutPicture, takenUpBy } from './cut-picture.js';
import { truedPicture, truingCuts } from './trued-picture.js';

/** Between two pictures of a strip, and between its rows, mm. */
const BETWEEN = 2.5;
const ROWS_APART = 1.5;

/** How the pictures, which keep no scale, are read. */
export const STRIP_KEY =
  'Heavy ring: a cut and its setting from the heavy fence line; thin ring: the cut that takes this piece up; dashed: waste. A plain strip without a name on the stock: an offcut, named at the cut that frees it';

/** The order of cuts of a piece of stock: a small picture for each, from left to right, row below row. */
export function cutStrip(
  { cuts }: LaidStock,
  { grainLocked }: StockLayout,
  units: DrawingUnits,
  room: number,
): DrawnFigure {
  const pictures = cutPictures(cuts, grainLocked, units);
  const rows = inRows(pictures, room);
  const heights = rows.map((row) => Math.max(...row.map((one) => one.height)));
  const height = heights.reduce((sum, one) => sum + one + ROWS_APART, rows.length > 0 ? -ROWS_APART : 0);
  return {
    kind: 'drawn',
    said: cuts.map((cut) => cutWords(cut, cuts, units)).join(' '),
    width: room,
    height,
    draw: ([x, y]) => {
      let top = y + height;
      return rows.flatMap((row, i) => {
        let left = x;
        const drawn = row.flatMap((one) => {
          const strokes = one.draw([left, top - one.height]);
          left += one.width + BETWEEN;
          return strokes;
        });
        top -= heights[i]! + ROWS_APART;
        return drawn;
      });
    },
  };
}

/** A picture for each cut, those that true the stock in one. */
export function cutPictures(
  cuts: readonly Cut[],
  grain: boolean,
  units: DrawingUnits,
): readonly CutPicture[] {
  const setting = (mm: number): string => bareSize(mm, units);
  const truing = truingCuts(cuts);
  return [
    ...(truing.length > 0 ? [truedPicture(truing, truing.length + 1, setting)] : []),
    ...cuts.slice(truing.length).map((cut) => cutPicture({ cut, cuts, grain, setting: setting(cut.at) })),
  ];
}

/** As many pictures in a row as it holds. */
function inRows(pictures: readonly CutPicture[], room: number): readonly (readonly CutPicture[])[] {
  const rows: CutPicture[][] = [];
  let used = 0;
  for (const one of pictures) {
    const last = rows.at(-1);
    if (last && used + BETWEEN + one.width <= room) {
      last.push(one);
      used += BETWEEN + one.width;
    } else {
      rows.push([one]);
      used = one.width;
    }
  }
  return rows;
}

/** A picture in a sentence. */
function cutWords(cut: Cut, cuts: readonly Cut[], units: DrawingUnits): string {
  const words = (one: Outcome): string =>
    one.kind === 'part' || one.kind === 'offcut'
      ? one.id
      : one.kind === 'piece'
        ? `what cut ${takenUpBy(one.rect, cuts)} takes up`
        : one.kind;
  return `Cut ${cut.number}, ${cut.direction} at ${bareSize(cut.at, units)}: ${words(cut.near)}, and ${words(cut.far)}.`;
}

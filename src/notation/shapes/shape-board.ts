import type { PlacedBoard } from '../../assembly/index.js';
import type { Board } from '../../board/index.js';
import type { Reckoning } from '../formulas/index.js';
import type { Axes } from '../places/index.js';
import { atLine, type Keys, keysOf, type Place } from '../text/index.js';
import { arch } from './arch.js';
import { bevel, notch, round, slope } from './corner-cuts.js';
import { type Cutting, cutBoard, cuttingOf } from './cutting.js';
import { groove, holes, opening } from './holes.js';
import type { Shaped } from './own-side.js';
import { taper } from './taper.js';

type CutOutline = (cutting: Cutting, keys: Keys, shaped: Shaped, at: Place) => Cutting;
type CutBoard = (board: Board, keys: Keys, shaped: Shaped, at: Place, id: string) => Board;

/** Shapes of the outline and its arrises, in the order they are cut. */
const OUTLINE: Readonly<Record<string, { readonly cut: CutOutline; readonly form: string }>> = {
  taper: { cut: taper, form: 'taper: { sides: right and back, to: 25, at: bottom }' },
  slope: { cut: slope, form: 'slope: { side: top, from: 0 below top, to: 80 below top }' },
  bevel: { cut: bevel, form: 'bevel: { corner: back bottom, long: 60, deep: 20 }' },
  arch: { cut: arch, form: 'arch: { side: bottom, high: 30, feet: 60 }' },
  notch: { cut: notch, form: 'notch: { corner: front bottom, long: 40, deep: 60 }' },
  round: { cut: round, form: 'round: { corners: all, radius: 15 }' },
};

/** What is cut into the shaped board. */
const INTO: Readonly<Record<string, { readonly cut: CutBoard; readonly form: string }>> = {
  opening: { cut: opening, form: 'opening: { long: 90, wide: 30 }' },
  groove: { cut: groove, form: 'groove: { side: right, wide: 8, deep: 10 }' },
  holes: { cut: holes, form: 'holes: { side: right, wide: 5, deep: 10 }' },
};

/** Keys of a board that shape it. */
export const SHAPE_KEYS: readonly string[] = [...Object.keys(OUTLINE), ...Object.keys(INTO)];

/** @throws Problem for what cannot be read or cut, at the line that asks for it */
export function shapeBoard(placed: PlacedBoard, axes: Axes, keys: Keys, reckon: Reckoning): PlacedBoard {
  if (!SHAPE_KEYS.some((key) => keys.has(key))) return placed;
  const shaped: Shaped = { placed, axes, reckon };
  let cutting = cuttingOf(placed.board);
  let last: Place | undefined;
  for (const [key, { cut, form }] of Object.entries(OUTLINE)) {
    const entry = keys.get(key);
    if (!entry) continue;
    last = entry.at;
    for (const told of keysOf(entry, key, form))
      cutting = atLine(entry.at, key.length, () => cut(cutting, told, shaped, entry.at));
  }
  let board = last ? atLine(last, 1, () => cutBoard(cutting)) : placed.board;
  for (const [key, { cut, form }] of Object.entries(INTO)) {
    const entry = keys.get(key);
    if (!entry) continue;
    const list = keysOf(entry, key, form);
    list.forEach((told, i) => {
      const id = list.length === 1 ? key : `${key}-${i + 1}`;
      board = atLine(entry.at, key.length, () => cut(board, told, shaped, entry.at, id));
    });
  }
  return { ...placed, board };
}

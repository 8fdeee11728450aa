import { BoardError } from '../errors.js';
import { type Frame, moved, scale, turnedAbout, type Vec3 } from '../frame/index.js';
import type { PlacedBoard } from './placed-board.js';

/**
 * A board and its copies along a line, called `slat-1`, `slat-2`, …
 *
 * @param count how many in all, the given one first
 * @param step from each to the next, mm, assembly frame
 * @throws BoardError when the count is not a whole number from 1, or the board has mortises
 * @example repeatedAlong(slat, 7, [60, 0, 0]).length // 7
 */
export const repeatedAlong = (placed: PlacedBoard, count: number, step: Vec3): readonly PlacedBoard[] =>
  copies(placed, count, (place, i) => moved(place, scale(step, i)));

/**
 * A board and its copies round an upright line, evenly spread and called `leg-1`, `leg-2`, … counter-clockwise seen from above.
 *
 * @param count how many in all, the given one first
 * @param centre a point of the line, mm, assembly frame
 * @throws BoardError when the count is not a whole number from 1, or the board has mortises
 * @example repeatedRound(leg, 3).map(({ board }) => board.id) // leg-1, leg-2, leg-3
 */
export const repeatedRound = (
  placed: PlacedBoard,
  count: number,
  centre: Vec3 = [0, 0, 0],
): readonly PlacedBoard[] =>
  copies(placed, count, (place, i) => turnedAbout(place, centre, (360 * i) / count));

function copies(
  { board, place }: PlacedBoard,
  count: number,
  at: (place: Frame, i: number) => Frame,
): readonly PlacedBoard[] {
  if (!Number.isInteger(count) || count < 1)
    throw new BoardError(
      'repeat-count',
      `board ${board.id}: repeated ${count} times; give a whole number, 1 or more`,
    );
  if (board.mortises.length > 0)
    throw new BoardError(
      'repeat-mortises',
      `board ${board.id}: it has mortises already: repeat boards before they are joined`,
    );
  return Array.from({ length: count }, (_, i) => ({
    board: { ...board, id: `${board.id}-${i + 1}`, name: `${board.name} ${i + 1}` },
    place: at(place, i),
  }));
}

import type { Board } from '../board/index.js';
import { type Frame, pointOut, type Vec3 } from '../frame/index.js';

/** A board and where it stands: `place` is the board frame written in the assembly frame. */
export interface PlacedBoard {
  readonly board: Board;
  readonly place: Frame;
}

/** The middle of a board's blank, assembly frame. */
export const blankMiddle = ({ board: { blank }, place }: PlacedBoard): Vec3 =>
  pointOut(place, [blank.length / 2, blank.width / 2, blank.thickness / 2]);

import type { Board } from '../board/index.js';
import type { Frame } from '../frame/index.js';

/** A board and where it stands: `place` is the board frame written in the assembly frame. */
export interface PlacedBoard {
  readonly board: Board;
  readonly place: Frame;
}

import type { Vec3 } from '../../frame/index.js';
import type { CutSide } from './told-board.js';

/** How a board stands before its ends are cut, assembly frame. */
export interface Pose {
  /** Unit, the board's three directions, each beside the one of the piece it runs in nearly or exactly, its way. */
  readonly ways: readonly [Vec3, Vec3, Vec3];
  readonly middle: Vec3;
  /** mm, in the order of `ways`. */
  readonly sizes: readonly [number, number, number];
  /** Ends and edges that are cut to a plane; the sizes reach to the long point. */
  readonly cuts: readonly CutSide[];
}

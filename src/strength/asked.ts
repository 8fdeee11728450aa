import type { Design, User } from '../assembly/index.js';
import type { Season } from '../movement/index.js';
import type { GlueTold } from './glue.js';
import type { Resting } from './resting.js';
import type { StockState } from './stock-state.js';
import type { UsedSurface } from './used-surface.js';

/** What the person tells of the place of a piece, its wood and its glue, and of joints as they make them. */
export interface Told {
  /** What the air of the place does to its wood. */
  readonly season: Season;
  readonly stock: StockState;
  /** The usual wood glue when left out. */
  readonly glue?: GlueTold;
  /** Of a joint, measured, N·m/rad. */
  readonly jointStiffness?: number;
}

/** What every part of the work is given. */
export interface Asked extends Told {
  readonly design: Design;
  readonly user: User;
  /** The surfaces that are used, with their loads; at least one. */
  readonly surfaces: readonly UsedSurface[];
  readonly resting: Resting;
  /** What refuses nothing may be left out, to take little time. */
  readonly atOnce?: boolean;
}

import type { Design, User } from '../assembly/index.js';
import type { Season } from '../movement/index.js';
import type { Resting } from './resting.js';
import type { UsedSurface } from './used-surface.js';

/** What every part of the work is given. */
export interface Asked {
  readonly design: Design;
  readonly user: User;
  /** The surfaces that are used, with their loads; at least one. */
  readonly surfaces: readonly UsedSurface[];
  readonly resting: Resting;
  /** What the air of the place does to its wood. */
  readonly season: Season;
  /** Of a joint, measured, N·m/rad. */
  readonly jointStiffness?: number;
}

/** What the person tells of the place of a piece and of joints as they make them. */
export type Told = Pick<Asked, 'season' | 'jointStiffness'>;

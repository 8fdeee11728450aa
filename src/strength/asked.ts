import type { Design, User } from '../assembly/index.js';
import type { Resting } from './resting.js';
import type { UsedSurface } from './used-surface.js';

/** What every part of the work is given. */
export interface Asked {
  readonly design: Design;
  readonly user: User;
  /** The surfaces that are used, with their loads; at least one. */
  readonly surfaces: readonly UsedSurface[];
  readonly resting: Resting;
}

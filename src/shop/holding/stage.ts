import type { Board } from '../../board/index.js';

/** How far a board has been worked, in the order of the work. */
export type StageName = 'milled blank' | 'ends cut' | 'outline cut';

/** A board as it is at a stage: same frame, same ids; `outline cut` is the whole outline with every bevel and opening. */
export interface Stage {
  readonly name: StageName;
  readonly board: Board;
}

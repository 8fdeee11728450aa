import type { Solids } from '../../solid/index.js';
import type { GlueAtHand } from '../at-hand/index.js';
import { type GlueUp, glueUp } from './glue-up.js';
import type { Blocked } from './glue-up-move.js';
import { type PathBlock, pathBlocks } from './glue-up-path.js';

/** A glue-up whose every step was moved on the solids, and what was found in the way while looking for it. */
export interface ProvedGlueUp {
  readonly glueUp: GlueUp;
  /** Boards in the way of orders that were tried and given up. */
  readonly inTheWay: readonly PathBlock[];
}

/**
 * The best glue-up that also works on the solids: an order is found from the joints, its moves are made on the solids, and
 * whatever meets on the way is shut out of the next search, until an order goes through or none is left.
 */
export function provedGlueUp(solids: Solids, glue?: GlueAtHand): ProvedGlueUp {
  const inTheWay: PathBlock[] = [];
  // most steps of a new order stood in the last one too
  const clear = new Set<string>();
  for (;;) {
    const blocked = inTheWay.map(
      ({ boards: [moving, still], direction }): Blocked => ({ moving, still, direction }),
    );
    const tried = glueUp(solids.design, glue, blocked);
    const blocks = tried.steps.flatMap((step) => {
      const key = JSON.stringify([step.moving, step.still, step.direction, step.travel]);
      if (clear.has(key)) return [];
      const found = pathBlocks(solids, tried, step);
      if (found.length === 0) clear.add(key);
      return found;
    });
    // each round shuts out a pair of boards along a direction; there are only so many
    if (blocks.length === 0) return { glueUp: tried, inTheWay };
    inTheWay.push(...blocks);
  }
}

import fc from 'fast-check';
import type { Design } from '../../src/assembly/index.js';
import { built, type Wish, wishes } from './random-designs.js';

/** A design and what was wished for; no design when the model refused it. */
export interface Sampled {
  readonly wish: Wish;
  readonly name: string;
  readonly design: Design | undefined;
}

/** So many random designs from a seed, each built when it is asked for. */
export function* sampledDesigns(count: number, seed: number): Generator<Sampled> {
  for (const wish of fc.sample(wishes, { numRuns: count, seed })) {
    const made = built(wish);
    yield {
      wish,
      name: `${wish.model} ${JSON.stringify(wish.raw)}`,
      design: made instanceof Error ? undefined : made,
    };
  }
}

import type { ClampAtHand, Verdict } from '../at-hand/index.js';

/** What a clamp must do: open so far, and reach in so far from its bar. mm */
export interface ClampNeed {
  readonly opening: number;
  readonly throat: number;
}

/** Whether a clamp at hand is left for a need, and what it wants when none is. */
export interface ClampChoice {
  readonly verdict: Verdict;
  /** None opens so far; those that do are too shallow; or all that would do are in use. */
  readonly wants?: 'opening' | 'throat' | 'count';
}

/**
 * Shares the clamps at hand out among the needs of a stage, each clamp once, so that as many needs as can be are met
 * (augmenting paths: Kuhn, The Hungarian method for the assignment problem, 1955). Shorter clamps are taken first.
 */
export function clampsChosen(
  needs: readonly ClampNeed[],
  atHand: readonly ClampAtHand[],
): readonly ClampChoice[] {
  if (atHand.length === 0) return needs.map(() => ({ verdict: 'not verified' }));
  const clamps = atHand
    .flatMap((clamp) => Array.from({ length: Math.min(clamp.count, needs.length) }, () => clamp))
    .toSorted((a, b) => a.opening - b.opening || a.throat - b.throat);
  const does = (clamp: ClampAtHand, need: ClampNeed) =>
    clamp.opening >= need.opening && clamp.throat >= need.throat;
  const user = new Map<number, number>();
  const serve = (need: number, seen: Set<number>): boolean =>
    clamps.some((clamp, i) => {
      if (seen.has(i) || !does(clamp, needs[need]!)) return false;
      seen.add(i);
      const other = user.get(i);
      if (other !== undefined && !serve(other, seen)) return false;
      user.set(i, need);
      return true;
    });
  for (const need of needs.keys()) serve(need, new Set());
  const served = new Set(user.values());
  return needs.map((need, i): ClampChoice => {
    if (served.has(i)) return { verdict: 'passed' };
    const long = clamps.filter(({ opening }) => opening >= need.opening);
    const wants =
      long.length === 0 ? 'opening' : long.some((clamp) => does(clamp, need)) ? 'count' : 'throat';
    return { verdict: 'failed', wants };
  });
}

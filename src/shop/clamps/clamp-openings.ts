import type { ClampAtHand, Verdict } from '../at-hand/index.js';

/** The longest opening takes the shortest clamp that still opens so far; each clamp serves once in a stage. */
export function openingVerdicts(
  openings: readonly number[],
  atHand: readonly ClampAtHand[],
): readonly Verdict[] {
  if (atHand.length === 0) return openings.map(() => 'not verified');
  const left = atHand
    .flatMap(({ opening, count }) => Array.from({ length: count }, () => opening))
    .toSorted((a, b) => a - b);
  const verdicts: Verdict[] = openings.map(() => 'failed');
  const order = openings.map((opening, i) => ({ opening, i })).toSorted((a, b) => b.opening - a.opening);
  for (const { opening, i } of order) {
    const at = left.findIndex((most) => most >= opening);
    if (at < 0) continue;
    left.splice(at, 1);
    verdicts[i] = 'passed';
  }
  return verdicts;
}

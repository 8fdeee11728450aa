import { type Rule, stepOf, stepsInMm } from './rule.js';

/** Lengths that follow one another, rounded so that they still add up. */
export interface Chain {
  /** Each part in whole steps of the rule: tenths of a mm, lines of an inch. */
  readonly steps: readonly number[];
  /** All parts together, in the same steps; their sum. */
  readonly totalSteps: number;
  /** Each part after rounding, mm. */
  readonly parts: readonly number[];
  readonly total: number;
  /** The largest difference between a part and what it was, mm; less than one step. */
  readonly error: number;
}

/**
 * Rounds lengths that follow one another so that the rounded parts add up to the rounded whole.
 *
 * The whole goes to the nearest step. Every part is cut down to a whole step, and the steps still missing go to the parts
 * that lost most (largest remainder): no other choice of neighbouring steps has a smaller largest error.
 *
 * @param parts mm, finite, each 0 or more
 * @param rule what the parts are read off
 * @throws RangeError for a part that is negative or not finite: a fault of the program
 * @example closedChain([33.33, 33.33, 33.34], 'mm').parts // [33.3, 33.3, 33.4]
 */
export function closedChain(parts: readonly number[], rule: Rule): Chain {
  if (parts.some((part) => !(Number.isFinite(part) && part >= 0)))
    throw new RangeError(`a chain of ${parts.join(', ')} mm cannot be rounded`);
  const step = stepOf(rule);
  const exact = parts.map((part) => part / step);
  const totalSteps = Math.round(exact.reduce((sum, part) => sum + part, 0));
  const steps = exact.map(Math.floor);
  const missing = totalSteps - steps.reduce((sum, part) => sum + part, 0);
  const byRemainder = exact
    .map((part, at) => ({ at, remainder: part - Math.floor(part) }))
    .toSorted((a, b) => b.remainder - a.remainder || a.at - b.at);
  for (const { at } of byRemainder.slice(0, Math.max(missing, 0))) steps[at]! += 1;
  // a sum of many parts may round one step below the sum of their whole steps
  for (const { at } of byRemainder.toReversed().slice(0, Math.max(-missing, 0))) steps[at]! -= 1;
  return {
    steps,
    totalSteps,
    parts: steps.map((count) => stepsInMm(count, rule)),
    total: stepsInMm(totalSteps, rule),
    error: Math.max(0, ...steps.map((count, at) => Math.abs(stepsInMm(count, rule) - parts[at]!))),
  };
}

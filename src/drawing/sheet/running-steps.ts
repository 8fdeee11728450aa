import { printLength, type Rule, stepOf, stepsInMm, trimmed } from '../../length/index.js';

/** Distances from one start in whole steps, and from each to the next. */
export interface RunningSteps {
  readonly running: readonly number[];
  readonly parts: readonly number[];
}

/**
 * Rounds the stops of a chain that is printed beside its running figures: each running figure goes to the nearest step, and a
 * part is the difference of the figures at its ends, within one step of the truth. So parts, running figures and the whole
 * agree on one sheet; a chain rounded for itself alone would close too, but could contradict the figures beside it.
 *
 * @param stops mm, ascending; the first is the start
 * @example runningSteps([0, 33.34, 66.68, 100], 'mm').parts // [333, 334, 333], in tenths: 33.3 + 33.4 + 33.3 = 100
 */
export function runningSteps(stops: readonly number[], rule: Rule): RunningSteps {
  const running = stops.map((stop) => Math.round((stop - stops[0]!) / stepOf(rule)));
  return { running, parts: running.slice(1).map((steps, i) => steps - running[i]!) };
}

/**
 * Whole steps as text: tenths of a millimetre without unit and without zeros at the end, or inches with their mark.
 *
 * @example printSteps(575, 'mm') // '57.5'
 */
export const printSteps = (steps: number, rule: Rule): string =>
  rule === 'mm' ? trimmed(steps / 10, 1) : printLength(stepsInMm(steps, rule), { units: rule });

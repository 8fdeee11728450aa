import { INCH, printLength, trimmed, type Units } from '../../length/index.js';

/** The finest step a drawing is printed to: 0.1 mm, or 1/64 inch; mm. */
export const STEP: Readonly<Record<Units, number>> = { mm: 0.1, in: INCH / 64 };

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
export function runningSteps(stops: readonly number[], units: Units): RunningSteps {
  const running = stops.map((stop) => Math.round((stop - stops[0]!) / STEP[units]));
  return { running, parts: running.slice(1).map((steps, i) => steps - running[i]!) };
}

/**
 * Whole steps as text: tenths of a millimetre without unit and without zeros at the end, or 64ths of an inch with the inch mark.
 *
 * @example printSteps(575, 'mm') // '57.5'
 */
export const printSteps = (steps: number, units: Units): string =>
  units === 'mm' ? trimmed(steps / 10, 1) : printLength(steps * STEP.in, { units });

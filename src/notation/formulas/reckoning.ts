import type { Units } from '../../length/index.js';
import type { Phrase } from '../text/index.js';
import { figureOf, formulaOf, type Scope, type Wanted } from './formula.js';
import { numberOf } from './quantity.js';

/** Works out the formulas of a file with the values of one run; lengths in mm, angles in degrees. */
export interface Reckoning {
  readonly figure: (phrase: Phrase, wanted: Wanted) => number;
  readonly yes: (phrase: Phrase) => boolean;
  /** The same with `n`, the number of a copy. */
  readonly withCopy: (n: number) => Reckoning;
}

/**
 * @param scope dimensions and what is worked out, by name
 * @param units what bare numbers are in
 */
export const reckoning = (scope: Scope, units: Units): Reckoning => ({
  figure: (phrase, wanted) => figureOf(formulaOf(phrase), scope, wanted, units),
  yes: ({ value, at }) =>
    value === 'yes' || (value !== 'no' && figureOf(formulaOf({ value, at }), scope, 'yes', units) !== 0),
  withCopy: (n) => reckoning(withName(scope, 'n', n), units),
});

const withName = (scope: Scope, name: string, value: number): Scope =>
  Object.assign((asked: string) => (asked === name ? numberOf(value) : scope(asked)), {
    known: [...(scope.known ?? []), name],
  });

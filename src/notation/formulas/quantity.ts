/**
 * A figure and its kind: powers of length and of angle, both 0 for a plain number; or yes (1) and no (0).
 *
 * `bare` is a plain number in which a number without a unit stands, like `240 × 2`: where a length or an angle is wanted it is taken
 * for one.
 */
export interface Quantity {
  /** mm, degrees, or mm to the power of `lengths`. */
  readonly value: number;
  readonly lengths: number;
  readonly angles: number;
  readonly bare?: boolean;
  readonly yes?: true;
}

export const lengthOf = (mm: number): Quantity => ({ value: mm, lengths: 1, angles: 0 });
export const angleOf = (degrees: number): Quantity => ({ value: degrees, lengths: 0, angles: 1 });
export const numberOf = (value: number): Quantity => ({ value, lengths: 0, angles: 0 });
export const yesOf = (is: boolean): Quantity => ({ value: is ? 1 : 0, lengths: 0, angles: 0, yes: true });

export const isPlain = ({ lengths, angles, yes }: Quantity): boolean =>
  !yes && Math.abs(lengths) < SAME_POWER && Math.abs(angles) < SAME_POWER;

/** Whether two figures can be added. */
export const isSameKind = (a: Quantity, b: Quantity): boolean =>
  a.yes === b.yes &&
  Math.abs(a.lengths - b.lengths) < SAME_POWER &&
  Math.abs(a.angles - b.angles) < SAME_POWER;

/** Powers are halved by roots: halves and quarters are exact, and nothing else occurs. */
const SAME_POWER = 1e-9;

const LENGTH_WORDS: ReadonlyMap<number, string> = new Map([
  [-1, 'one divided by a length'],
  [1, 'a length'],
  [2, 'an area'],
  [3, 'a volume'],
]);

/** What a figure is: `a length`, `an area`, `a plain number`. */
export function kindWords(of: Quantity): string {
  if (of.yes) return 'yes or no';
  if (isPlain(of)) return 'a plain number';
  const { lengths, angles } = of;
  if (angles === 0) return LENGTH_WORDS.get(lengths) ?? `a length to the power of ${lengths}`;
  if (lengths === 0) return angles === 1 ? 'an angle' : `an angle to the power of ${angles}`;
  return 'a length and an angle multiplied';
}

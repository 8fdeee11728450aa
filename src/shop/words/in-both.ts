import { printLength, speaker } from '../../length/index.js';

/** A length in mm and in inches to the nearest 64th, with what is left over: `57.7 mm = 2-17/64" (+0.11 mm)`. */
export const inBoth = (mm: number): string =>
  `${printLength(mm, { units: 'mm' })} = ${printLength(mm, { units: 'in' })}`;

/** Lengths of one sentence, a figure and its limit for one, in both units; finer where two that differ would read alike. */
export function inBothApart(...lengths: readonly number[]): readonly string[] {
  const [mm, inches] = [speaker('mm').lengths(...lengths), speaker('in').lengths(...lengths)];
  return lengths.map((_, i) => `${mm[i]} = ${inches[i]}`);
}

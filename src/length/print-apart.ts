import { SAME_LENGTH } from '../tolerances.js';
import { fixed } from './fixed.js';
import { INCH, type Units } from './units.js';

/** The decimals tried, coarse to fine, where the usual figures read alike. */
const DECIMALS: Readonly<Record<Units, readonly number[]>> = { mm: [2, 3, 4, 5, 6], in: [3, 4, 5, 6, 7] };

/**
 * Lengths of one sentence, such as a figure and its limit, printed so that those that differ read apart and none but 0 reads as
 * 0: as `print` says them, or all with the fewest decimals that will do.
 *
 * @param lengths mm, finite
 * @param print how they are said where that tells them apart
 * @example printApart([31.04, 31], (mm) => printLength(mm, { units: 'mm' }), 'mm') // ['31.04 mm', '31.00 mm']
 */
export function printApart(
  lengths: readonly number[],
  print: (mm: number) => string,
  units: Units,
): readonly string[] {
  const finer = DECIMALS[units].map(
    (decimals) => (mm: number) =>
      units === 'mm' ? `${fixed(mm, decimals)} mm` : `${fixed(mm / INCH, decimals)}"`,
  );
  const all = [0, ...lengths];
  const readApart = (say: (mm: number) => string) =>
    all.every((a, i) => all.slice(i + 1).every((b) => Math.abs(a - b) < SAME_LENGTH || say(a) !== say(b)));
  return lengths.map([print, ...finer].find(readApart) ?? finer.at(-1)!);
}

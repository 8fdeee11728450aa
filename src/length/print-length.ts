import { ON_LINE_INCH } from '../tolerances.js';
import { fixed, trimmed } from './fixed.js';
import { linesOf, type Rule } from './rule.js';
import { INCH, type Units } from './units.js';

/** Lines in an inch that a size is taken to be on however its rule is marked. */
const FINEST = 64;

/**
 * A length as it is read off a rule: mm to 0.1, inches to the nearest 1/32 or the line its shop works to, or thousandths as a
 * caliper shows. What a fit needs finer is said by {@link printFit}, what a person types by {@link printFine}.
 *
 * @param mm finite
 * @example printLength(57.5, { units: 'mm' }) // '57.5 mm'
 * @example printLength(57.66, { units: 'in' }) // '2-9/32"'
 * @example printLength(57.66, { units: 'in/1000' }) // '2.270"'
 */
export function printLength(mm: number, { units }: { readonly units: Rule }): string {
  if (units === 'mm') return `${fixed(mm, 1)} mm`;
  if (units === 'in/1000') return `${fixed(mm / INCH, 3)}"`;
  return fraction(nearestLine(mm, linesOf(units)), linesOf(units));
}

/**
 * The air of a fit, and sizes that are held to it: mm to 0.01, inches in thousandths.
 *
 * @param mm finite
 * @example printFit(0.1, { units: 'in' }) // '0.004"'
 */
export const printFit = (mm: number, { units }: { readonly units: Rule }): string =>
  units === 'mm' ? `${trimmed(mm, 2)} mm` : printLength(mm, { units: 'in/1000' });

/**
 * A length as exactly as anyone would type it, for limits, defaults and what is finer than a rule:
 * mm to 0.001, or a fraction of an inch where it is one and else inches to 0.0001.
 *
 * @param mm finite
 * @example printFine(0.05, { units: 'mm' }) // '0.05 mm'
 * @example printFine(230, { units: 'in' }) // '9.0551"'
 */
export function printFine(mm: number, { units }: { readonly units: Units }): string {
  if (units === 'mm') return `${trimmed(mm, 3)} mm`;
  const lines = nearestLine(mm, FINEST);
  return onLine(mm, lines) && (lines !== 0 || mm === 0)
    ? fraction(lines, FINEST)
    : `${trimmed(mm / INCH, 4)}"`;
}

/**
 * The size of a cutter, a drill or what they cut, which is bought and not measured: mm to 0.1; inches as the fraction it is sold
 * by, whatever the shop's rule, or in thousandths when it is none.
 *
 * @param mm finite
 * @example printTool(9.128125, { units: 'in' }) // '23/64"'
 * @example printTool(8, { units: 'in' }) // '0.315"'
 */
export function printTool(mm: number, { units }: { readonly units: Rule }): string {
  if (units === 'mm') return printLength(mm, { units });
  return soldInInches(mm) ? fraction(nearestLine(mm, FINEST), FINEST) : printLength(mm, { units: 'in/1000' });
}

/** Whether a cutter or a drill of a size, mm, is a fraction of an inch, as they are sold. */
export const soldInInches = (mm: number): boolean => onLine(mm, nearestLine(mm, FINEST));

const onLine = (mm: number, lines: number): boolean => Math.abs(mm / INCH - lines / FINEST) < ON_LINE_INCH;

const nearestLine = (mm: number, perInch: number): number =>
  Math.sign(mm) * Math.round((Math.abs(mm) * perInch) / INCH);

function fraction(lines: number, perInch: number): string {
  const minus = lines < 0 ? '-' : '';
  const size = Math.abs(lines);
  const whole = Math.floor(size / perInch);
  let over = size % perInch;
  let under = perInch;
  if (over === 0) return `${minus}${fixed(whole, 0)}"`;
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return `${minus}${whole > 0 ? `${fixed(whole, 0)}-` : ''}${over}/${under}"`;
}

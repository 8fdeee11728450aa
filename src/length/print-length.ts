import { ON_LINE_INCH } from '../tolerances.js';
import { fixed, trimmed } from './fixed.js';
import { INCH, type Units } from './units.js';

/** The finest line of a rule marked in inches. */
const LINES_PER_INCH = 64;

/**
 * A length as it is read off a rule: mm to 0.1, or inches to the nearest 1/64. What a fit needs finer is said by {@link printFine}.
 *
 * @param mm finite
 * @example printLength(57.5, { units: 'mm' }) // '57.5 mm'
 * @example printLength(57.66, { units: 'in' }) // '2-17/64"'
 */
export function printLength(mm: number, { units }: { readonly units: Units }): string {
  if (units === 'mm') return `${fixed(mm, 1)} mm`;
  return fraction(nearestLine(mm));
}

/**
 * A length as exactly as anyone would type it, for limits, defaults and fits finer than a rule:
 * mm to 0.001, or a fraction of an inch where it is one and else inches to 0.0001.
 *
 * @param mm finite
 * @example printFine(0.05, { units: 'mm' }) // '0.05 mm'
 * @example printFine(230, { units: 'in' }) // '9.0551"'
 */
export function printFine(mm: number, { units }: { readonly units: Units }): string {
  if (units === 'mm') return `${trimmed(mm, 3)} mm`;
  const lines = nearestLine(mm);
  const onLine = Math.abs(mm / INCH - lines / LINES_PER_INCH) < ON_LINE_INCH;
  return onLine && (lines !== 0 || mm === 0) ? fraction(lines) : `${trimmed(mm / INCH, 4)}"`;
}

const nearestLine = (mm: number): number =>
  Math.sign(mm) * Math.round((Math.abs(mm) * LINES_PER_INCH) / INCH);

function fraction(lines: number): string {
  const minus = lines < 0 ? '-' : '';
  const size = Math.abs(lines);
  const whole = Math.floor(size / LINES_PER_INCH);
  let over = size % LINES_PER_INCH;
  let under = LINES_PER_INCH;
  if (over === 0) return `${minus}${fixed(whole, 0)}"`;
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return `${minus}${whole > 0 ? `${fixed(whole, 0)}-` : ''}${over}/${under}"`;
}

/**
 * A number as text with a fixed count of decimals: the one number formatter of every writer.
 *
 * Never `-0`, never an exponent, so the same number is the same bytes everywhere. Half of the last decimal is rounded away from
 * 0, and so is what lies below it by the last bits of a sum: 5.75 and 5.749999999999999 are one size and print alike.
 *
 * @param value finite, any unit
 * @param decimals 0 to 20
 * @throws RangeError for NaN and infinity: they are faults of the program by the time a number is printed
 * @example fixed(-0.0004, 3) // '0.000'
 */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be printed as a number`);
  const text =
    Math.abs(value) < LONGEST ? nudged(value, decimals).toFixed(decimals) : wholeDigits(value, decimals);
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
}

/**
 * A number as text with at most so many decimals, without the zeros at the end.
 *
 * @throws RangeError for NaN and infinity
 *
 * @example trimmed(57.5, 3) // '57.5'
 */
export function trimmed(value: number, decimals: number): string {
  const text = fixed(value, decimals);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** Below what any size is told apart by, far above what sums of sizes are off by; with more decimals it would show itself. */
const LAST_BITS = 1e-10;
const nudged = (value: number, decimals: number): number =>
  decimals < 9 ? value + Math.sign(value) * LAST_BITS : value;

/** From here on `toFixed` writes an exponent; every double this large is whole. */
const LONGEST = 1e21;

const wholeDigits = (value: number, decimals: number): string =>
  BigInt(value).toString() + (decimals > 0 ? `.${'0'.repeat(decimals)}` : '');

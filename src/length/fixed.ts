/**
 * A number as text with a fixed count of decimals: the one number formatter of every writer.
 *
 * Never `-0`, never an exponent, so the same number is the same bytes everywhere.
 *
 * @param value finite, any unit
 * @param decimals 0 to 20
 * @throws RangeError for NaN and infinity: they are faults of the program by the time a number is printed
 * @example fixed(-0.0004, 3) // '0.000'
 */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be printed as a number`);
  const text = Math.abs(value) < LONGEST ? value.toFixed(decimals) : wholeDigits(value, decimals);
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

/** From here on `toFixed` writes an exponent; every double this large is whole. */
const LONGEST = 1e21;

const wholeDigits = (value: number, decimals: number): string =>
  BigInt(value).toString() + (decimals > 0 ? `.${'0'.repeat(decimals)}` : '');

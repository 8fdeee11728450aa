/** Least number written: JavaScript prints smaller ones with an exponent, which some readers do not take. */
const LEAST = 1e-6;

/**
 * A number as the DXF writers may print it: no exponent, no -0.
 *
 * @param decimals kept; a value below 1e-6 becomes 0
 */
export function rounded(value: number, decimals: number): number {
  const kept = Number(value.toFixed(decimals));
  return Math.abs(kept) < LEAST ? 0 : kept;
}

/** A length in file units: 1e-6 mm, or 1e-8 inch above 1e-6. */
export const inFile = (mm: number, perMm: number): number => rounded(mm * perMm, perMm === 1 ? 6 : 8);

/** Text that stays in its group: a line break would begin the next one. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
export const oneRow = (text: string): string => text.replace(/[\u0000-\u001f\u007f]+/g, ' ');

/** One-character fractions and how they are typed. */
const FRACTIONS: ReadonlyMap<string, string> = new Map([
  ['½', '1/2'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
  ['¼', '1/4'],
  ['¾', '3/4'],
  ['⅕', '1/5'],
  ['⅖', '2/5'],
  ['⅗', '3/5'],
  ['⅘', '4/5'],
  ['⅙', '1/6'],
  ['⅚', '5/6'],
  ['⅐', '1/7'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
  ['⅑', '1/9'],
  ['⅒', '1/10'],
]);

/**
 * Typographic marks as they are typed on a keyboard: primes, curly quotes, fractions, the minus sign, wide and thin spaces.
 *
 * @example plainText('9½″') // '9 1/2"'
 */
export const plainText = (text: string): string =>
  text
    .replace(/(\d?)-?([½⅓⅔¼¾⅕-⅞⅐⅑⅒])/gu, (all, digit: string, mark: string) =>
      digit === '' ? all.replace(mark, FRACTIONS.get(mark)!) : `${digit} ${FRACTIONS.get(mark)!}`,
    )
    .replace(/[′’‘]/gu, "'")
    .replace(/[″“”]/gu, '"')
    .replace(/''/g, '"')
    .replace(/[−‐‑–]/gu, '-')
    .replace(/⁄/gu, '/')
    .replace(/\s+/gu, ' ')
    .trim();

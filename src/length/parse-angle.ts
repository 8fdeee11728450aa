import { InputError } from '../errors.js';
import { readAmount } from './amount.js';
import { plainText } from './plain-text.js';

/**
 * An angle as people write it.
 *
 * @param text `10`, `10deg`, `10°`, `7 1/2 degrees`, `-3.5`
 * @returns degrees
 * @throws InputError `angle-empty`, `angle-not-a-number`, `angle-divided-by-zero`, `angle-too-large`, `angle-text-after`
 * @example parseAngle('7½°') // 7.5
 */
export function parseAngle(text: string): number {
  const plain = plainText(text);
  if (plain === '')
    throw new InputError('angle-empty', 'an angle is missing: write degrees, like 10 or 7.5°');
  const signed = /^([+-]?) ?(.*)$/.exec(plain)!;
  const { value, rest } = readAmount(signed[2]!, text, 'angle');
  if (!/^ ?(?:°|deg|degs|degree|degrees)?$/i.test(rest))
    throw new InputError(
      'angle-text-after',
      `'${text}' goes on with '${rest.trim()}' after the number: an angle is in degrees, written deg, ° or nothing`,
    );
  return signed[1] === '-' && value !== 0 ? -value : value;
}

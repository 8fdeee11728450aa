import { InputError } from '../errors.js';
import { fixed, trimmed } from './fixed.js';
import { plainText } from './plain-text.js';
import type { Units } from './units.js';

/** Kilograms in a pound (NIST SP 811). */
const POUND = 0.45359237;

/**
 * A mass as people write it; a bare number is in kilograms, or in pounds for who works in inches.
 *
 * @param text `150`, `150 kg`, `330 lb`
 * @returns kg
 * @throws InputError `mass-not-a-number`
 * @example parseMass('220 lb', 'mm') // 99.79…
 */
export function parseMass(text: string, units: Units): number {
  const found = /^(\d+(?:\.\d+)?) ?(kg|kgs|lb|lbs)?$/i.exec(plainText(text));
  if (!found)
    throw new InputError(
      'mass-not-a-number',
      `'${text}' is not a mass: write a number, like 150 kg or 330 lb`,
    );
  const unit = found[2]?.toLowerCase() ?? (units === 'mm' ? 'kg' : 'lb');
  return Number(found[1]) * (unit.startsWith('lb') ? POUND : 1);
}

/** A mass in the person's units: `150 kg`, `331 lb`. */
export const printMass = (kg: number, units: Units): string =>
  units === 'mm' ? `${trimmed(kg, 1)} kg` : `${fixed(kg / POUND, 0)} lb`;

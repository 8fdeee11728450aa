import { InputError } from '../errors.js';
import type { Units } from '../length/index.js';

/** A list as it was written: its entries, and what its bare numbers are in. */
export interface Entries {
  readonly units: Units;
  readonly entries: readonly string[];
}

/**
 * The entries of a list written on one line or on several, which may begin with what its bare numbers are in: `in: 1-2 3.5; …`.
 *
 * @param units what bare numbers are in when the list does not say it
 * @throws InputError when there are none, or the unit is neither mm nor in
 */
export function entries(text: string, units: Units, what: string, example: string): Entries {
  const said = /^\s*([a-z]+)\s*:([\s\S]*)$/i.exec(text);
  const unit = (said?.[1] ?? units).toLowerCase();
  if (unit !== 'mm' && unit !== 'in')
    throw new InputError(
      'holes-unit',
      `${what}: the list begins with '${unit}:'; it may begin with mm: or in:, the unit of its bare numbers`,
    );
  const found = (said?.[2] ?? text)
    .split(/[;\n]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');
  if (found.length > 0) return { units: unit, entries: found };
  throw new InputError('holes-missing', `${what}: nothing is given: write the list like ${example}`);
}

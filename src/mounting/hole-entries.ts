import { InputError } from '../errors.js';

/**
 * The entries of a list written on one line or on several.
 *
 * @throws InputError when there are none
 */
export function entries(text: string, what: string, example: string): readonly string[] {
  const found = text
    .split(/[;\n]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');
  if (found.length > 0) return found;
  throw new InputError('holes-missing', `${what}: nothing is given: write them like ${example}`);
}

import { InputError } from '../errors.js';
import { parseLength, type Units } from '../length/index.js';
import { entries } from './hole-entries.js';

/** One measured distance between the centres of two named points, mm. */
export interface Measured {
  readonly from: string;
  readonly to: string;
  readonly distance: number;
}

const EXAMPLE = '1-2 98.5; 1-3 112; 2-3 87.25';

/**
 * Measured distances as text.
 *
 * @param text two names with a hyphen, a space and a length; a semicolon or a new line between entries
 * @param bare what bare numbers are in, unless the text begins with `mm:` or `in:`
 * @throws InputError naming the entry that cannot be read
 */
export function readDistances(text: string, bare: Units): readonly Measured[] {
  const list = entries(text, bare, 'hole distances', EXAMPLE);
  return list.entries.map((entry) => measured(entry, list.units));
}

function measured(entry: string, units: Units): Measured {
  const found = /^([a-z0-9]+) *[-–] *([a-z0-9]+)[ :=]+(.+)$/i.exec(entry);
  if (!found)
    throw new InputError(
      'hole-distance',
      `hole distance '${entry}' cannot be read: write two names and a length, like 1-2 98.5`,
    );
  const [from, to] = [found[1]!.toLowerCase(), found[2]!.toLowerCase()];
  if (from === to)
    throw new InputError('hole-distance', `hole distance '${entry}' runs from ${from} to itself: name two`);
  try {
    return { from, to, distance: parseLength(found[3]!, { units, sign: 'positive' }) };
  } catch (error) {
    throw error instanceof InputError
      ? new InputError(error.code, `hole distance '${entry}': ${error.message}`)
      : error;
  }
}

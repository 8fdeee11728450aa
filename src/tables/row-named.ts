import { closest } from 'fastest-levenshtein';
import { InputError } from '../errors.js';

/**
 * The row of a reference table with a name.
 *
 * @param rows in the order they are told to the person
 * @param key where a row keeps its name
 * @param what the table holds, in the singular: `species`
 * @throws InputError `not-in-table`, with the nearest name
 */
export function rowNamed<Key extends string, Row extends Readonly<Record<Key, string>>>(
  rows: readonly Row[],
  key: Key,
  name: string,
  what: string,
): Row {
  const found = rows.find((row) => row[key] === name);
  if (found !== undefined) return found;
  const names = rows.map((row) => row[key]);
  throw new InputError(
    'not-in-table',
    `${what} '${name}' is not in the table: did you mean '${closest(name, names)}'? Known are ${names.join(', ')}`,
  );
}

import { didYouMeanWord, Problem, problemWith } from './problem.js';
import { type Place, partOf, type Told } from './told.js';
import type { Entry, Keys, Phrase, Said } from './tree.js';

/** The words behind a key. @throws Problem when there are none, or a list or further keys stand there */
export function phraseOf(entry: Entry, key: string): Phrase {
  const { value, at } = entry.said;
  if (typeof value === 'string') return { value, at };
  throw new Problem(
    value === undefined ? entry.at : at,
    1,
    value === undefined ? `nothing follows '${key}'` : `'${key}' is told in one phrase`,
    `write words after the colon`,
  );
}

/** One phrase or several in a list. */
export function phrasesOf(entry: Entry, key: string): readonly Phrase[] {
  const { value } = entry.said;
  if (!Array.isArray(value)) return [phraseOf(entry, key)];
  return (value as readonly Said[]).map((said) => phraseOf({ at: entry.at, said }, key));
}

/** Further keys, or a list of such. @param form what to write, for the error @throws Problem */
export function keysOf(entry: Entry, key: string, form: string): readonly Keys[] {
  const { value, at } = entry.said;
  if (value instanceof Map) return [value];
  if (Array.isArray(value))
    return (value as readonly Said[]).flatMap((said) => keysOf({ at: entry.at, said }, key, form));
  throw new Problem(
    at,
    typeof value === 'string' ? value.length : 1,
    `'${key}' needs more than that`,
    `write ${form}`,
  );
}

/** @throws Problem for a key nobody knows */
export function onlyKeys(keys: Keys, known: readonly string[], of: string): void {
  for (const [key, { at }] of keys)
    if (!known.includes(key))
      throw new Problem(at, key.length, `${of} knows no '${key}'`, didYouMeanWord(key, known));
}

/** One of a few words. @throws Problem */
export function oneOf<T extends string>(phrase: Phrase, words: readonly T[]): T {
  const found = words.find((word) => word === phrase.value);
  if (found !== undefined) return found;
  throw problemWith(phrase, `'${phrase.value}' cannot stand here`, didYouMeanWord(phrase.value, words));
}

/** Parts joined by `and`, each with its place. @example partsOf({ value: 'right and back', at }) */
export function partsOf(phrase: Phrase): readonly Phrase[] {
  const parts: Phrase[] = [];
  let from = 0;
  for (const found of phrase.value.matchAll(/\s+and\s+/g)) {
    parts.push(partOf(phrase, from, found.index));
    from = found.index + found[0].length;
  }
  return [...parts, partOf(phrase, from)];
}

/** An entry that has to be there. @throws Problem at the place of what lacks it */
export function needed(keys: Keys, key: string, at: Told<string> | Place, of: string, remedy: string): Entry {
  const found = keys.get(key);
  if (found) return found;
  const [where, length] = 'at' in at ? [at.at, at.value.length] : [at, 1];
  throw new Problem(where, length, `${of} does not say its '${key}'`, remedy);
}

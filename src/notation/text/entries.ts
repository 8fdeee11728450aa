import { Problem, problemWith } from './problem.js';
import { partOf } from './told.js';
import type { Entry, Keys, MustLine, PairEntry, Phrase, Said } from './tree.js';

/** `foot <= leg: the taper takes wood away`, one or several in one entry. */
export function must({ value, at }: Said): readonly MustLine[] {
  if (!isKeys(value) || value.size === 0)
    throw new Problem(
      at,
      typeof value === 'string' ? value.length : 1,
      'this does not say what to do when it is not so',
      "write 'foot <= leg: make the leg thicker'",
    );
  return [...value].map(([text, entry]) => {
    const whole = { value: text, at: entry.at };
    const found = /<=|>=|≤|≥|<|>|=/.exec(text);
    if (!found)
      throw problemWith(
        whole,
        `'${text}' compares nothing`,
        'write two formulas with <=, >=, <, > or = between them',
      );
    const relation = found[0].replace('≤', '<=').replace('≥', '>=') as MustLine['relation'];
    return {
      left: partOf(whole, 0, found.index),
      relation,
      right: partOf(whole, found.index + found[0].length),
      cure: phrase(entry, `what to do when it is not so`),
    };
  });
}

/** `apron and rail to leg` */
export function pair(name: Phrase, entry: Entry): PairEntry {
  const found = [...name.value.matchAll(/(?:^|\s)to(?=\s|$)/g)];
  if (found.length !== 1)
    throw problemWith(
      name,
      `'${name.value}' does not name two boards`,
      "write 'apron to leg', with one 'to' between them",
    );
  const [{ index, 0: word }] = found as [RegExpExecArray];
  const [a, b] = [partOf(name, 0, index), partOf(name, index + word.length)];
  if (a.value === '' || b.value === '')
    throw problemWith(name, `a board is missing in '${name.value}'`, "write 'apron to leg'");
  return {
    a,
    b,
    options: entry.said.value === undefined ? new Map() : keys(entry, `${name.value}: { tenons: 2 }`),
  };
}

const isKeys = (value: Said['value']): value is Keys => value instanceof Map;

export const listed = ({ said }: Entry): readonly Said[] =>
  Array.isArray(said.value) ? (said.value as readonly Said[]) : [said];

export function phrase(entry: Entry, form: string): Phrase {
  const { value, at } = entry.said;
  if (typeof value === 'string' && value.trim() !== '') return { value, at };
  throw new Problem(
    at,
    1,
    value === undefined || value === '' ? 'nothing is said here' : 'one phrase is wanted here',
    form,
  );
}

export function keys({ said }: Entry, form: string): Keys {
  if (isKeys(said.value)) return said.value;
  throw new Problem(
    said.at,
    typeof said.value === 'string' ? said.value.length : 1,
    'keys are wanted here',
    form,
  );
}

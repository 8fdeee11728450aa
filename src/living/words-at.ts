import { type ToldKey, toldKeys } from './told-keys.js';

/** What of a JSON Schema the words come from. */
export interface Schema {
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: Schema | false;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly enum?: readonly string[];
}

/** A word that may stand at the cursor. */
export interface Word {
  readonly word: string;
  readonly help: string;
  /** What is written for it, in place of as many letters before the cursor. */
  readonly written: string;
  readonly typed: number;
  /** One of the language, and not a name out of the piece. */
  readonly fixed: boolean;
}

/** What may be written at a place of a piece's file: keys that are not yet there, words of a choice, its own boards and dimensions. */
export function wordsAt(text: string, at: number, schema: Schema): readonly Word[] {
  const { writing } = toldKeys(text.slice(0, at));
  if (!writing) return [];
  const { keys } = toldKeys(text);
  const { path, kind, typed } = writing;
  const here = path.filter((name) => !name.startsWith('[')).reduce(below, branches(schema));
  const colon = text[at] === ':' ? '' : ': ';
  const there = new Set(keys.filter((one) => String(one.path) === String(path)).map(({ key }) => key));
  // a shape and a list of them have the same keys
  const fixed = new Map<string, string>(
    kind === 'key'
      ? here.flatMap(({ properties = {} }) =>
          Object.entries(properties).flatMap(([key, { description = '' }]) =>
            there.has(key) ? [] : [[key, description] as const],
          ),
        )
      : here.flatMap((one) => (one.enum ?? []).map((word) => [word, ''] as const)),
  );
  return [
    ...[...fixed].flatMap(([word, help]) =>
      word.startsWith(typed)
        ? [{ word, help, written: kind === 'key' ? word + colon : word, typed: typed.length, fixed: true }]
        : [],
    ),
    ...namesFor(path, kind, here, keys).flatMap(([word, help]) => {
      const tail = tailOf(typed, word);
      return tail === undefined ? [] : [{ word, help, written: word, typed: tail, fixed: false }];
    }),
  ];
}

/** A schema and all that may stand in its place: an item of a list too, for a list of one is written without it. */
const branches = (schema: Schema): readonly Schema[] => [
  schema,
  ...(schema.anyOf ?? []).flatMap(branches),
  ...(schema.items ? branches(schema.items) : []),
];

const below = (schemas: readonly Schema[], name: string): readonly Schema[] =>
  schemas.flatMap(({ properties = {}, additionalProperties }) => {
    const one = Object.hasOwn(properties, name) ? properties[name] : additionalProperties;
    return one ? branches(one) : [];
  });

/** Names of the piece that a place may hold. */
function namesFor(
  [part, ...deeper]: readonly string[],
  kind: 'key' | 'value',
  here: readonly Schema[],
  keys: readonly ToldKey[],
): readonly (readonly [name: string, help: string])[] {
  const namesOf = (of: string, help: string) =>
    keys.flatMap(({ path, key }) => (path.length === 1 && path[0] === of ? [[key, help] as const] : []));
  const boards = namesOf('boards', 'a board');
  const figures = [...namesOf('dimensions', 'a dimension'), ...namesOf('worked out', 'worked out')];
  if (kind === 'key') {
    if (part === 'must') return figures;
    return (part === 'joints' || part === 'held') && deeper.length === 0 ? boards : [];
  }
  const formula = here.some(({ type = [] }) => type.includes('number') || type.includes('boolean'));
  if (!formula || part === 'dimensions') return [];
  return part === 'boards' || part === 'joints' ? [...boards, ...figures] : figures;
}

/** How many letters at the end of what is typed begin the word: names have blanks in them, and stand among other words. */
function tailOf(typed: string, word: string): number | undefined {
  for (let i = 0; i <= typed.length; i += 1)
    if ((i === 0 || /[^\p{L}\p{N}]/u.test(typed[i - 1]!)) && word.startsWith(typed.slice(i)))
      return typed.length - i;
  return undefined;
}

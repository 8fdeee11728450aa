import { InputError } from '../../errors.js';
import { parseAngle, parseLength } from '../../length/index.js';
import { type Problem, partOf, problemWith, type Told } from '../text/index.js';
import { angleOf, lengthOf, type Quantity } from './quantity.js';

/** A word of a formula: a figure, a name, or a sign as it is typed on a keyboard. */
export interface FormulaWord {
  readonly is: 'figure' | 'name' | 'sign' | 'end';
  /** The name with single blanks, the sign, or the figure as it was written. */
  readonly text: string;
  readonly figure?: Quantity;
  /** Where it stands in the formula, letters from 0. */
  readonly from: number;
  readonly to: number;
}

const MARK = '[½⅓⅔¼¾⅕-⅞⅐⅑⅒]';
const FRACTION = `\\d+ ?[/⁄] ?\\d+`;
const DECIMAL = '(?:\\d+(?:\\.\\d*)?|\\.\\d+)';
/** `9-1/16`, `9 1/16`, `9½`, `7/8`, `.5`: with a hyphen only where a unit follows, for `9-1/16` by itself is a difference. */
const MIXED = `\\d+(?:[ -]${FRACTION}|[ -]?${MARK})|${FRACTION}|${MARK}|${DECIMAL}`;
const UNITS = `mm|cm|m|inches|inch|in|feet|foot|ft|["″“”]|''|['′’‘]`;

const pattern = (text: string): RegExp => new RegExp(text, 'iuy');

/** In the order they must be tried. */
const FEET_AND_INCHES = pattern(
  `${DECIMAL} ?(?:feet|foot|ft|['′’‘])[ -]*(?:${MIXED}) ?(?:inches|inch|in|["″“”]|'')(?![a-z])`,
);
const LENGTH = pattern(`(?:${MIXED}) ?(?:${UNITS})(?![\\p{L}])`);
const ANGLE = pattern(`(?:${MIXED}) ?(?:°|degrees|degree|degs|deg)(?![\\p{L}])`);
const BARE = pattern(`\\d+ ${FRACTION}|\\d* ?${MARK}|${DECIMAL}`);
const NAME = /\p{L}[\p{L}\p{N}]*(?: +\p{L}[\p{L}\p{N}]*)*/uy;
const SIGN = /<=|>=|[-+*/()<>=,]/y;

/** Signs that are written in more than one way. */
const TYPED: ReadonlyMap<string, string> = new Map([
  ...[...'×·∙'].map((sign) => [sign, '*'] as const),
  ...[...'÷⁄'].map((sign) => [sign, '/'] as const),
  ...[...'−‐‑–'].map((sign) => [sign, '-'] as const),
  ['≤', '<='],
  ['≥', '>='],
]);

/** Words that join, rather than being part of a name. */
const JOINING = ['and', 'or', 'not'];

/**
 * A formula as words, the last of which is its end.
 *
 * @throws Problem for a mark no formula has, and for a size that cannot be read
 */
export function formulaWords(told: Told<string>): readonly FormulaWord[] {
  const words: FormulaWord[] = [];
  const { value } = told;
  for (let at = 0; at < value.length; ) {
    if (/\s/u.test(value[at]!)) {
      at += 1;
      continue;
    }
    const found = wordAt(told, at);
    words.push(...found);
    at = found.at(-1)!.to;
  }
  return [...words, { is: 'end', text: '', from: value.length, to: value.length }];
}

function wordAt(told: Told<string>, at: number): readonly FormulaWord[] {
  const { value } = told;
  const name = textAt(NAME, value, at);
  if (name !== undefined) return namesIn(name, at);
  const length = textAt(FEET_AND_INCHES, value, at) ?? textAt(LENGTH, value, at);
  if (length !== undefined)
    return [
      figure(length, at, lengthOf(reading(told, at, length, () => parseLength(length, { units: 'mm' })))),
    ];
  const angle = textAt(ANGLE, value, at);
  if (angle !== undefined)
    return [figure(angle, at, angleOf(reading(told, at, angle, () => parseAngle(angle))))];
  const bare = textAt(BARE, value, at);
  if (bare !== undefined) {
    const plain = reading(told, at, bare, () => parseAngle(bare));
    return [figure(bare, at, { value: plain, lengths: 0, angles: 0, bare: true })];
  }
  const letter = String.fromCodePoint(value.codePointAt(at)!);
  const typed = TYPED.get(letter);
  const sign = typed ?? textAt(SIGN, value, at);
  if (sign === undefined) throw strange(told, at, letter);
  return [{ is: 'sign', text: sign, from: at, to: at + (typed === undefined ? sign.length : letter.length) }];
}

const figure = (text: string, at: number, of: Quantity): FormulaWord => ({
  is: 'figure',
  text,
  figure: of,
  from: at,
  to: at + text.length,
});

/** `lid and open` is two names and the word between them. */
function namesIn(text: string, at: number): readonly FormulaWord[] {
  const words: FormulaWord[] = [];
  for (const { 0: word, index } of text.matchAll(/\S+/g)) {
    const joins = JOINING.includes(word);
    const before = words.at(-1);
    const to = at + index + word.length;
    if (!joins && before?.is === 'name')
      words.splice(-1, 1, { ...before, text: `${before.text} ${word}`, to });
    else words.push({ is: joins ? 'sign' : 'name', text: word, from: at + index, to });
  }
  return words;
}

function textAt(sought: RegExp, text: string, at: number): string | undefined {
  sought.lastIndex = at;
  return sought.exec(text)?.[0];
}

function reading(told: Told<string>, at: number, text: string, read: () => number): number {
  try {
    return read();
  } catch (error) {
    throw error instanceof InputError
      ? problemWith(partOf(told, at, at + text.length), error.message)
      : error;
  }
}

const strange = (told: Told<string>, at: number, letter: string): Problem =>
  problemWith(
    partOf(told, at, at + letter.length),
    `'${letter}' has no place in a formula`,
    'a formula has figures, names, + − × ÷ and brackets',
  );

import { InputError } from '../errors.js';
import {
  parseAngle,
  parseLength,
  parseMass,
  printAngle,
  printFine,
  printMass,
  type Units,
} from '../length/index.js';
import { nearest } from './nearest.js';
import type { ParameterMeta } from './parameter.js';

export type Value = string | number | boolean;

const YES = ['true', 'yes', 'on'];
const NO = ['false', 'no', 'off'];

/**
 * One value as the person gave it, read by its parameter's kind. Numbers are in `units` for lengths, degrees for angles.
 *
 * The text of an error goes on from the parameter's name.
 *
 * @returns mm for a length, degrees for an angle
 * @throws InputError when it is not of the kind, or out of its range
 */
export function readValue(meta: ParameterMeta, raw: unknown, units: Units): Value {
  if (raw === null || (typeof raw === 'object' && raw !== null))
    throw wrong(`is ${raw === null ? 'empty' : 'a list or a group'}; it must be ${allowed(meta, units)}`);
  switch (meta.kind) {
    case 'flag':
      return readFlag(raw);
    case 'text':
      return meta.listsLengths ? withUnit(String(raw), units) : String(raw);
    case 'choice':
      return readChoice(meta, raw, units);
    default:
      return withinRange(meta, readNumber(meta, raw, units), units, String(raw).trim());
  }
}

/** The values a parameter allows, in the person's units. */
export function allowed(meta: ParameterMeta, units: Units): string {
  if (meta.kind === 'flag') return 'true or false';
  if (meta.kind === 'text') return 'any text';
  if (meta.kind === 'choice') return listed(meta.choices!.map(String));
  return `${printValue(meta, meta.min!, units)} to ${printValue(meta, meta.max!, units)}`;
}

/** `a`, `a or b`, `a, b or c`. */
const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join() : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

/** A value as the person would type it. */
export function printValue(
  meta: Pick<ParameterMeta, 'kind' | 'listsLengths'>,
  value: Value,
  units: Units,
): string {
  if (meta.kind === 'length') return printFine(Number(value), { units });
  if (meta.kind === 'angle') return printAngle(Number(value));
  if (meta.kind === 'mass') return printMass(Number(value), units);
  if (meta.listsLengths && units !== 'mm') return withUnit(String(value), 'mm', true);
  return String(value);
}

/** A list of lengths that says what its bare numbers are in; mm need not be said. */
function withUnit(list: string, units: Units, always = false): string {
  if (/^\s*[a-z]+\s*:/i.test(list) || (units === 'mm' && !always)) return list;
  return `${units}: ${list}`;
}

function readNumber(meta: ParameterMeta, raw: unknown, units: Units): number {
  if (typeof raw === 'boolean') throw wrong(`is ${raw}; it must be ${allowed(meta, units)}: give a number`);
  const words = typeof raw === 'number' ? plainDigits(raw) : String(raw);
  if (meta.kind === 'length')
    return saying(() => parseLength(words, { units, sign: meta.min! < 0 ? 'any' : 'non-negative' }));
  if (meta.kind === 'angle') return saying(() => parseAngle(words));
  if (meta.kind === 'mass') return saying(() => parseMass(words, units));
  if (!/^ *[+-]?\d+ *$/.test(words))
    throw wrong(`is '${words}'; it must be a whole number, ${allowed(meta, units)}, without a unit`);
  return Number(words);
}

/** `1e-7` is a number in a file though not in a shop. */
const plainDigits = (value: number): string =>
  Number.isFinite(value) && /e/.test(String(value)) ? value.toFixed(12) : String(value);

function saying(read: () => number): number {
  try {
    return read();
  } catch (error) {
    throw error instanceof InputError ? wrong(`cannot be read: ${error.message}`) : error;
  }
}

/** A value printed like a limit is that limit: limits are told rounded, and what is told as allowed must be accepted. */
function withinRange(meta: ParameterMeta, value: number, units: Units, given: string): number {
  for (const limit of [meta.min!, meta.max!])
    if (printValue(meta, value, units) === printValue(meta, limit, units)) return nearer(meta, value, limit);
  if (value >= meta.min! && value <= meta.max!) return value;
  const remedy = `${value < meta.min! ? 'give more' : 'give less'}${otherUnit(meta, units, given)}`;
  throw wrong(`is ${printValue(meta, value, units)}; it must be ${allowed(meta, units)}: ${remedy}`);
}

/** A bare number that is a length of the range in other units was most likely meant in them. */
function otherUnit(meta: ParameterMeta, units: Units, given: string): string {
  if (meta.kind !== 'length' || !/[\d.]$/.test(given)) return '';
  const fitting = ['mm', 'cm', 'in']
    .map((unit) => `${given} ${unit}`)
    .filter((text) => {
      const mm = parseLength(text, { units });
      return mm >= meta.min! && mm <= meta.max!;
    });
  return fitting.length === 0 ? '' : `, or did you mean ${fitting.join(' or ')}?`;
}

const nearer = (meta: ParameterMeta, value: number, limit: number): number =>
  value < meta.min! || value > meta.max! ? limit : value;

function readFlag(raw: unknown): boolean {
  const word = String(raw).trim().toLowerCase();
  if (YES.includes(word)) return true;
  if (NO.includes(word)) return false;
  throw wrong(`is '${String(raw)}'; it must be true or false`);
}

function readChoice(meta: ParameterMeta, raw: unknown, units: Units): Value {
  const word = String(raw).trim();
  // an inch size may be written with its mark, as over the counter
  const plain = word.toLowerCase().replace(/(?<=\d) ?(?:["″]|in|inch)$/, '');
  const found = meta.choices!.find((one) => String(one).toLowerCase() === plain);
  if (found !== undefined) return found;
  const names = meta.choices!.map(String);
  const kinds = names.filter((name) => name.toLowerCase().split(/[ -]/).includes(plain));
  const meant = kinds.length > 0 ? kinds.join(' or ') : nearest(word, names);
  throw wrong(
    `is '${String(raw)}'; it must be ${allowed(meta, units)}${meant === undefined ? '' : `: did you mean ${meant}?`}`,
  );
}

const wrong = (words: string): InputError => new InputError('parameter-refused', words);

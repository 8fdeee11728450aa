import { InputError } from '../errors.js';
import { readAmount } from './amount.js';
import { plainText } from './plain-text.js';
import { toMm, type Units, unitNamed } from './units.js';

export type Sign = 'positive' | 'non-negative' | 'any';

export interface LengthOptions {
  /** What a number without a unit is in. */
  readonly units: Units;
  /** Which values are a length here; `any` when absent. */
  readonly sign?: Sign;
}

/** The remainder `printLength` writes after a fraction: what was printed may be typed back. */
const REMAINDER = / ?\(([+-]\d+(?:\.\d+)?) mm\)$/;

const UNIT = /^ ?([a-z]+|"|')/i;

/**
 * A length as people write it.
 *
 * @param text `230`, `230mm`, `23 cm`, `9in`, `9-1/16"`, `3/8`, `1' 2-1/2"`, `0.375in`; typographic marks too
 * @returns mm
 * @throws InputError `length-empty`, `length-not-a-number`, `length-divided-by-zero`, `length-too-large`, `length-two-units`,
 *   `length-text-after`, `length-negative`, `length-zero`
 * @example parseLength('9 1/16 in', { units: 'mm' }) // 230.1875
 */
export function parseLength(text: string, { units, sign = 'any' }: LengthOptions): number {
  const plain = plainText(text);
  if (plain === '')
    throw new InputError('length-empty', `a length is missing: write a number, like 230, 23 cm or 9-1/16"`);
  const printed = plain.includes('"') ? REMAINDER.exec(plain) : null;
  const body = printed ? plain.slice(0, printed.index) : plain;
  const signed = /^([+-]?) ?(.*)$/.exec(body)!;
  const size = readUnsigned(signed[2]!, text, units);
  const mm = (signed[1] === '-' ? -size : size) + Number(printed?.[1] ?? 0);
  if (!Number.isFinite(mm))
    throw new InputError('length-too-large', `'${text}' is too large to work with: write fewer digits`);
  return checkSign(mm === 0 ? 0 : mm, text, sign);
}

function readUnsigned(body: string, text: string, units: Units): number {
  const first = readAmount(body, text, 'length');
  const unit = readUnit(first.rest, text);
  if (unit.rest === '') return toMm(first.value, unit.is ?? units);
  if (unit.is !== 'ft' || !/^[ -]*[\d.]/.test(unit.rest)) throw afterNumber(unit.rest, text);
  const second = readAmount(unit.rest.replace(/^[ -]+/, ''), text, 'length');
  const inches = readUnit(second.rest, text);
  if (inches.rest !== '') throw afterNumber(inches.rest, text);
  if (inches.is !== undefined && inches.is !== 'in') throw twoUnits(text, 'only inches may follow feet');
  return toMm(first.value * 12 + second.value, 'in');
}

function readUnit(rest: string, text: string) {
  const found = UNIT.exec(rest);
  if (!found) return { is: undefined, rest };
  const is = unitNamed(found[1]!);
  if (is === undefined) throw afterNumber(rest, text);
  return { is, rest: rest.slice(found[0].length).replace(/^ /, '') };
}

function afterNumber(rest: string, text: string): InputError {
  const written = (plainText(text).match(/[a-z]+|["']/gi) ?? []).filter(
    (word) => unitNamed(word) !== undefined,
  );
  if (written.length > 1) return twoUnits(text, 'a length has one unit');
  const remedy = /^,\d/.test(rest)
    ? 'write a point for the decimals, not a comma'
    : `allowed units are mm, cm, m, in, ", ft and '`;
  return new InputError(
    'length-text-after',
    `'${text}' goes on with '${rest.trim()}' after the number: ${remedy}`,
  );
}

const twoUnits = (text: string, why: string): InputError =>
  new InputError(
    'length-two-units',
    `'${text}' has two units, and ${why}: write one, like 23 cm, or feet and inches, like 1' 2-1/2"`,
  );

function checkSign(mm: number, text: string, sign: Sign): number {
  if (mm < 0 && sign !== 'any')
    throw new InputError(
      'length-negative',
      `'${text}' is negative where a size is meant: leave the minus out`,
    );
  if (mm === 0 && sign === 'positive')
    throw new InputError('length-zero', `'${text}' is zero where a size is meant: write more than 0`);
  return mm;
}

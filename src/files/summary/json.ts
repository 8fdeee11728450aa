import { trimmed } from '../../length/index.js';

/** Digits after the point that are written: a nanometre, a microgram. */
const DECIMALS = 6;

/**
 * A value as JSON text, the same bytes for the same value: keys in the order they were given, numbers to 6 decimals without
 * trailing zeros, no `-0`, no exponent, two blanks a level, a line break at the end. Properties that are `undefined` are left out.
 *
 * @throws RangeError for a number that is not finite, a function, a symbol or a bigint: faults of the program
 * @example json({ length: 0.1 + 0.2 }) // '{\\n  "length": 0.3\\n}\\n'
 */
export const json = (value: unknown): string => `${written(value, '')}\n`;

function written(value: unknown, indent: string): string {
  if (value === null || typeof value === 'boolean' || typeof value === 'string') return JSON.stringify(value);
  if (typeof value === 'number') return trimmed(value, DECIMALS);
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    return enclosed(
      '[',
      value.map((item) => written(item, deeper)),
      ']',
      indent,
    );
  }
  if (typeof value === 'object') {
    const rows = Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .map(([key, item]) => `${JSON.stringify(key)}: ${written(item, deeper)}`);
    return enclosed('{', rows, '}', indent);
  }
  throw new RangeError(`a ${typeof value} has no JSON form`);
}

const enclosed = (open: string, rows: readonly string[], close: string, indent: string): string =>
  rows.length === 0
    ? open + close
    : `${open}\n${rows.map((row) => `${indent}  ${row}`).join(',\n')}\n${indent}${close}`;

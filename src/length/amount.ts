import { InputError } from '../errors.js';

/** An unsigned number at the start of a text and what follows it. */
export interface Amount {
  readonly value: number;
  readonly rest: string;
}

/** `9 1/16`, `9-1/16`, `3/8`, `0.375`, `.5`, `10`, in the order they must be tried. */
const MIXED = /^(\d+)[ -](\d+) ?\/ ?(\d+)/;
const FRACTION = /^(\d+) ?\/ ?(\d+)/;
const DECIMAL = /^(?:\d+\.?\d*|\.\d+)/;

/**
 * Reads one unsigned amount.
 *
 * @param text already plain, without a sign
 * @param whole the text as the person gave it, for the message
 * @param kind `length` or `angle`: begins the code of an error
 * @throws InputError `<kind>-not-a-number`, `<kind>-divided-by-zero`, `<kind>-too-large`
 */
export function readAmount(text: string, whole: string, kind: string): Amount {
  const found = take(text);
  if (found === undefined)
    throw new InputError(
      `${kind}-not-a-number`,
      `'${whole}' is not ${kind === 'angle' ? 'an' : 'a'} ${kind}: write a number, like ${EXAMPLES[kind]}`,
    );
  const [value, used] = found;
  if (Number.isNaN(value) || (value === Infinity && /\/ ?0+$/.test(used)))
    throw new InputError(
      `${kind}-divided-by-zero`,
      `'${whole}' divides by zero: write a number other than 0 under the stroke`,
    );
  if (!Number.isFinite(value))
    throw new InputError(`${kind}-too-large`, `'${whole}' is too large to work with: write fewer digits`);
  return { value, rest: text.slice(used.length) };
}

const EXAMPLES: Readonly<Record<string, string>> = {
  length: '230, 23 cm or 9-1/16"',
  angle: '10, 10deg or 7.5°',
};

function take(text: string): readonly [value: number, used: string] | undefined {
  const mixed = MIXED.exec(text);
  if (mixed) return [Number(mixed[1]) + Number(mixed[2]) / Number(mixed[3]), mixed[0]];
  const fraction = FRACTION.exec(text);
  if (fraction) return [Number(fraction[1]) / Number(fraction[2]), fraction[0]];
  const decimal = DECIMAL.exec(text);
  return decimal ? [Number(decimal[0]), decimal[0]] : undefined;
}

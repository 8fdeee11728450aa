import { InputError } from '../../errors.js';
import { INCH, parseLength, toMm, trimmed, type Units } from '../../length/index.js';
import { type Phrase, type Problem, partOf, problemWith } from '../text/index.js';

const IN_INCHES = /(?:inches|inch|in|feet|foot|ft|["″“”'′’‘])$/i;

/**
 * What a dimension begins at, and the figure behind `or` that it begins at for who works in inches.
 *
 * @example beginnings(phrase('800 or 32 in')) // ['800', '32 in']
 */
export function beginnings(head: Phrase): readonly [own: Phrase, inches?: Phrase] {
  const or = /\s+or(?:\s+|$)/.exec(head.value);
  if (!or) return [head];
  return [partOf(head, 0, or.index), partOf(head, or.index + or[0].length)];
}

/** Why what is no length that can be set has no figure of its own in inches. */
const WHY = {
  flag: "what is 'yes' or 'no' is no length",
  choice: "'one of' names what to choose between",
  number: "'how many' counts things",
  angle: 'an angle is the same for everyone',
  derived: 'what follows from others is worked out',
  built: 'a size that is there stays as it is',
} as const;

/** A figure in inches where there can be none. */
export const noInches = (figure: Phrase, why: keyof typeof WHY): Problem =>
  problemWith(
    figure,
    `'${figure.value}' stands for a figure in inches, and ${WHY[why]}: only a length that can be set has one`,
    `leave 'or ${figure.value}' out`,
  );

/** The range a figure in inches must keep, as told and mm. */
interface Limits {
  readonly least: Phrase;
  readonly most: Phrase;
  readonly min: number;
  readonly max: number;
}

/**
 * A figure for who works in inches.
 *
 * @param units of the file
 * @returns inches
 * @throws Problem when it is no length in inches, lies outside the range, or the file is in inches itself
 */
export function inchFigure(figure: Phrase, units: Units, { least, most, min, max }: Limits): number {
  if (units === 'in')
    throw problemWith(
      figure,
      'the file is in inches, so what stands before it is the figure in inches already',
      `leave 'or ${figure.value}' out`,
    );
  // the last bit of a quotient: a 64th is a 64th again
  const inches = Number((read(figure) / INCH).toPrecision(15));
  const mm = toMm(inches, 'in');
  if (mm >= min && mm <= max) return inches;
  throw problemWith(
    figure,
    `${figure.value} is ${trimmed(mm, 2)} mm, and not from ${least.value} to ${most.value}`,
    'take a figure within the range, or widen it',
  );
}

/** Whether words are a length in inches or feet. */
export const isInInches = (value: string): boolean => IN_INCHES.test(value) && /^[\d.½⅓⅔¼¾⅕-⅞]/.test(value);

/** @returns mm */
function read(figure: Phrase): number {
  const form = "write it like '32 in', '7/8 in' or '2 ft 6 in'";
  if (!isInInches(figure.value))
    throw problemWith(
      figure,
      figure.value === '' ? "nothing stands behind 'or'" : `'${figure.value}' is no length in inches`,
      form,
    );
  try {
    return parseLength(figure.value, { units: 'in' });
  } catch (error) {
    throw error instanceof InputError ? problemWith(figure, (say) => error.explain(say), form) : error;
  }
}

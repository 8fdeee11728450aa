import type * as z from 'zod';
import type { Units } from '../../length/index.js';
import { angle, choice, count, flag, length } from '../../model/index.js';
import {
  angleOf,
  type Formula,
  figureOf,
  formulaOf,
  lengthOf,
  namesOf,
  numberOf,
  type Quantity,
  quantityOf,
  type Scope,
  yesOf,
} from '../formulas/index.js';
import { type DimensionLine, type Phrase, Problem, partOf, problemWith } from '../text/index.js';
import { beginnings, inchFigure, isInInches, noInches } from './inch-figure.js';

/** What a maker can set, or found to be so, as one line tells it. */
export interface Dimension {
  readonly name: Phrase;
  /** Of the parameter, camelCase. */
  readonly parameter: string;
  readonly help: string;
  /** Of the parameter; none for a size that is as it was built. */
  readonly schema?: z.ZodType;
  /** What it is worked out from when it is not given. */
  readonly from?: {
    readonly formula: Formula;
    readonly least: number;
    readonly most: number;
    readonly wanted: FigureKind;
  };
  /** Of a `one of`. */
  readonly choices?: readonly string[];
  /** A value of the parameter as a figure; undefined for a word. mm, degrees. */
  readonly figure: (value: unknown) => Quantity | undefined;
}

type FigureKind = 'length' | 'angle' | 'number';

const NO_NAMES: Scope = () => undefined;

const WAYS =
  "write '800 from 400 to 1000; what it is', '800 or 32 in from 400 to 1000; …', 'how many 3 from 1 to 6; …', 'yes; …' or 'one of white oak or white ash; …'";

/** Words a name cannot be: they join formulas, or stand for a copy's number. */
const TAKEN: readonly string[] = ['and', 'or', 'not', 'n'];

/**
 * A dimension from its phrase.
 *

 * @throws Problem
 * @example dimensionOf(line('width', '800 from 400 to 1000; Outside, left to right'), 'mm')
 */
export function dimensionOf(line: DimensionLine, units: Units): Dimension {
  requireName(line.name);
  const { said } = line;
  const semicolon = said.value.indexOf(';');
  const head = partOf(said, 0, semicolon < 0 ? undefined : semicolon);
  const words = semicolon < 0 ? '' : said.value.slice(semicolon + 1).trim();
  const help = words === '' ? capital(line.name.value) : words;
  return { name: line.name, parameter: parameterName(line.name.value), help, ...kindOf(head, help, units) };
}

type Kind = Pick<Dimension, 'schema' | 'from' | 'choices' | 'figure'>;

function kindOf(head: Phrase, help: string, units: Units): Kind {
  const text = head.value;
  const ways = /^one of\s+/.exec(text);
  if (ways) return choiceOf(partOf(head, ways[0].length), help);
  const [own, inches] = beginnings(head);
  if (own.value === 'yes' || own.value === 'no') {
    if (inches) throw noInches(inches, 'flag');
    return { schema: flag({ default: text === 'yes', help }), figure: (value) => yesOf(value === true) };
  }
  const built = /^as built\s+/.exec(text);
  if (built) {
    if (inches) throw noInches(inches, 'built');
    return asBuilt(partOf(head, built[0].length), units);
  }
  const many = /^how many\s+/.exec(text);
  const range = /^(.+?)\s+from\s+(.+?)\s+to\s+(.+)$/.exec(text.slice(many?.[0].length ?? 0));
  if (!range) throw withoutRange(head, many !== null);
  const from = many?.[0].length ?? 0;
  const startEnd = from + range[1]!.length;
  const leastFrom = text.indexOf(range[2]!, text.indexOf('from', startEnd) + 4);
  const start = partOf(head, from, startEnd);
  const least = partOf(head, leastFrom, leastFrom + range[2]!.length);
  const most = partOf(head, text.length - range[3]!.length);
  return ranged({ start, least, most, whole: head, help, units, counts: many !== null });
}

/** What a range is told by. */
interface RangeTold {
  readonly start: Phrase;
  readonly least: Phrase;
  readonly most: Phrase;
  readonly whole: Phrase;
  readonly help: string;
  readonly units: Units;
  readonly counts: boolean;
}

function ranged({ start: told, least, most, whole, help, units, counts }: RangeTold): Kind {
  const [start, figureInches] = beginnings(told);
  const wanted = counts ? 'number' : kindTold([least, most], units);
  const limit = (phrase: Phrase): number => {
    const formula = formulaOf(phrase);
    if (namesOf(formula).length > 0)
      throw problemWith(
        phrase,
        `'${phrase.value}' is no figure`,
        "a range ends at figures; say what must hold besides under 'must'",
      );
    return wholeOf(phrase, figureOf(formula, NO_NAMES, wanted, units), counts);
  };
  const [min, max] = [limit(least), limit(most)];
  if (min > max)
    throw problemWith(
      whole,
      `the range ends before it begins`,
      `write 'from ${most.value} to ${least.value}'`,
    );
  const formula = formulaOf(start);
  const figure = (value: unknown): Quantity => FIGURES[wanted](Number(value));
  const make = MAKERS[counts ? 'count' : (wanted as 'length' | 'angle')];
  const derived = namesOf(formula).length > 0;
  if (figureInches && derived) throw noInches(figureInches, 'derived');
  if (figureInches && wanted !== 'length') throw noInches(figureInches, wanted);
  if (derived)
    return {
      schema: make({ min, max, help, derived: start.value }),
      from: { formula, least: min, most: max, wanted },
      figure,
    };
  const value = wholeOf(start, figureOf(formula, NO_NAMES, wanted, units), counts);
  if (value < min || value > max)
    throw problemWith(
      start,
      `${start.value} is not from ${least.value} to ${most.value}`,
      'widen the range, or begin within it',
    );
  const inches = figureInches && inchFigure(figureInches, units, { least, most, min, max });
  return {
    schema: make({ min, max, help, default: value, ...(inches !== undefined && { inches }) }),
    figure,
  };
}

const MAKERS = { length, angle, count } as unknown as Readonly<
  Record<'length' | 'angle' | 'count', (of: object) => z.ZodType>
>;

const FIGURES: Readonly<Record<FigureKind, (value: number) => Quantity>> = {
  length: lengthOf,
  angle: angleOf,
  number: numberOf,
};

/** A range of degrees is an angle; any other is a length. */
const kindTold = (limits: readonly Phrase[], units: Units): FigureKind =>
  limits.some((phrase) => {
    const formula = formulaOf(phrase);
    return namesOf(formula).length === 0 && quantityOf(formula, NO_NAMES, units).angles === 1;
  })
    ? 'angle'
    : 'length';

function wholeOf(phrase: Phrase, value: number, counts: boolean): number {
  if (counts && !Number.isInteger(value))
    throw problemWith(phrase, `'${phrase.value}' is no whole number`, "'how many' counts things");
  return value;
}

function choiceOf(told: Phrase, help: string): Kind {
  const choices = told.value.split(/\s*,\s*|\s+or\s+/).map((one) => one.trim());
  if (choices.length < 2 || choices.includes(''))
    throw problemWith(told, 'there is nothing to choose between', "write 'one of white oak or white ash'");
  const twice = choices.find((one, at) => choices.indexOf(one) < at);
  if (twice !== undefined) throw problemWith(told, `'${twice}' is told twice`, 'leave one out');
  const [first, ...others] = choices;
  const inches = others.find(isInInches);
  if (inches !== undefined && !isInInches(first!))
    throw noInches(
      partOf(told, told.value.indexOf(inches), told.value.indexOf(inches) + inches.length),
      'choice',
    );
  return {
    schema: choice(choices as [string, ...string[]], { default: first!, help }),
    choices,
    figure: () => undefined,
  };
}

/** A size that is there already, measured: it cannot be set. */
function asBuilt(told: Phrase, units: Units): Kind {
  const formula = formulaOf(told);
  const found = quantityOf(formula, NO_NAMES, units);
  const built = found.angles === 1 ? found : lengthOf(figureOf(formula, NO_NAMES, 'length', units));
  return { figure: () => built };
}

function withoutRange(head: Phrase, counts: boolean): Problem {
  const figure = counts ? /^how many\s+(.*)$/.exec(head.value)![1]! : head.value;
  if (!isFigure(partOf(head, head.value.length - figure.length)))
    return problemWith(
      head,
      `'${head.value}' is no dimension`,
      head.value.startsWith('worked out') ? "write it under 'worked out:', beside 'dimensions:'" : WAYS,
    );
  return problemWith(
    head,
    `'${head.value}' does not say from what to what it may be`,
    counts
      ? `write '${head.value} from 1 to 6; what it counts'`
      : `write '${figure} from … to …; what it is', or 'as built ${figure}' for a size that is there and stays`,
  );
}

function isFigure(phrase: Phrase): boolean {
  try {
    return namesOf(formulaOf(phrase)).length === 0;
  } catch (error) {
    if (error instanceof Problem) return false;
    throw error;
  }
}

/** A dimension is an option too, and stands in formulas. @throws Problem */
export function requireName(name: Phrase): void {
  const words = name.value.split(' ');
  if (!words.every((word) => /^[a-z][a-z0-9]*$/.test(word)))
    throw problemWith(
      name,
      `'${name.value}' cannot name a dimension`,
      'use words of small letters a to z with blanks between them, digits at the end of a word',
    );
  const taken = words.find((word) => TAKEN.includes(word));
  if (taken !== undefined)
    throw problemWith(name, `'${taken}' has a meaning of its own in formulas`, 'choose another word');
}

/** @example parameterName('apron thick') // 'apronThick' */
export const parameterName = (name: string): string =>
  name.replace(/ ([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

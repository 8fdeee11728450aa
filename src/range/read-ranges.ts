import * as z from 'zod';
import { InputError } from '../errors.js';
import type { Ranges } from './ranges.js';

const unsound = { sound: z.literal(false), code: z.string(), text: z.string(), cure: z.string().optional() };
const dimension = z.object({
  name: z.string(),
  label: z.string(),
  kind: z.enum(['length', 'angle', 'count']),
  value: z.number(),
  least: z.number(),
  most: z.number(),
  step: z.number(),
});
const span = z.object({ from: z.number(), to: z.number() });
const beyond = z.object({ ...unsound, value: z.number() }).optional();
const answer = z.discriminatedUnion('sound', [z.object({ sound: z.literal(true) }), z.object(unsound)]);
const pair = z.tuple([z.number(), z.number()]);

/** Ranges as they are written to a file, with what they are about. */
const written = z.object({
  about: z.string(),
  alone: z.array(
    z.object({ dimension, span, below: beyond, above: beyond, again: z.array(span), looked: z.number() }),
  ),
  map: z
    .object({
      across: dimension,
      up: dimension,
      columns: z.array(z.number()),
      rows: z.array(z.number()),
      cells: z.array(z.array(z.object({ answer, tried: z.boolean() }))),
      borders: z.array(z.object({ sound: pair, unsound: pair })),
    })
    .optional(),
  together: z
    .object({
      limits: z.array(
        z.object({ dimension, from: z.number(), to: z.number(), drawnIn: z.object(unsound).optional() }),
      ),
      tried: z.number().int(),
      broke: z.number().int(),
    })
    .optional(),
  tried: z.number().int(),
});

/**
 * Ranges from the text of a file that `range` wrote.
 *
 * @param about what they must be about: the design at hand
 * @param shown the file's name, for the message
 * @throws InputError `ranges-unreadable` when it is no such file, `ranges-of-another` when they were found for other values,
 *   another shop or another version of the program
 */
export function readRanges(text: string, about: string, shown: string): Ranges {
  const found = rangesIn(text);
  if (!found)
    throw new InputError(
      'ranges-unreadable',
      `${shown} holds no ranges: name the ranges.json that the command range wrote`,
    );
  if (found.about !== about)
    throw new InputError(
      'ranges-of-another',
      `${shown} was found for other values, another shop, other units or another version of this program: run the command range with the values of this line, then name its file`,
    );
  return found.ranges;
}

/** Ranges from the text of a file that `range` wrote; undefined when it is no such file, or about anything else. */
export function rangesAbout(text: string, about: string): Ranges | undefined {
  const found = rangesIn(text);
  return found?.about === about ? found.ranges : undefined;
}

function rangesIn(text: string): { readonly about: string; readonly ranges: Ranges } | undefined {
  const found = written.safeParse(parsed(text));
  if (!found.success) return undefined;
  const { about, ...ranges } = found.data;
  return { about, ranges: ranges as Ranges };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

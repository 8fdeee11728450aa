import { resolve } from 'node:path';
import { keptLines, shippedRangesText } from '../../node/index.js';
import { aboutOf, type Ranges, rangesAbout, readRanges } from '../../range/index.js';
import type { Question, Values } from '../../verdict/index.js';

/**
 * The ranges that a shipped design states for itself, where they are of these very values, shop and program.
 *
 * @returns undefined when there are none, or they are of anything else
 */
export function shippedRanges(
  asked: { readonly question: Question; readonly values: Values },
  version: string,
): Ranges | undefined {
  const text = shippedRangesText(asked.question.model.name);
  return text === undefined ? undefined : rangesAbout(text, aboutOf(asked.question, asked.values, version));
}

/**
 * The ranges a person names for a plan.
 *
 * @param shown path of the file as it was given, from `cwd`
 * @throws InputError when it cannot be read, or is about another design
 */
export const givenRanges = (
  shown: string,
  cwd: string,
  asked: { readonly question: Question; readonly values: Values },
  version: string,
): Ranges =>
  readRanges(keptLines(resolve(cwd, shown), shown), aboutOf(asked.question, asked.values, version), shown);

import { resolve } from 'node:path';
import { keptLines } from '../node/index.js';
import { aboutOf, type Ranges, readRanges } from '../range/index.js';
import type { Question, Values } from '../verdict/index.js';

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

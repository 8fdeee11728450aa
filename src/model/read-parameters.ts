import type * as z from 'zod';
import { InputError, type Place } from '../errors.js';
import type { Units } from '../length/index.js';
import { defaultIn } from './default-in.js';
import type { Model } from './model.js';
import { didYouMean } from './nearest.js';
import { optionName } from './option-name.js';
import { parameterMeta } from './parameter.js';
import { readValue } from './read-value.js';

/**
 * The values of a run: what the person gave, read by kind, and defaults for the rest.
 *
 * @param raw by camelCase or kebab-case name; `undefined` counts as not given
 * @param units what bare numbers for lengths are in, and what messages are written in
 * @param round what defaults are round in: the shop's measures where there is one
 * @returns mm and degrees
 * @throws InputError with every problem, a line each
 */
export function readParameters<Shape extends z.ZodRawShape>(
  model: Pick<Model<Shape>, 'name' | 'parameters'>,
  raw: Readonly<Record<string, unknown>>,
  units: Units,
  round: Units = units,
): z.infer<z.ZodObject<Shape>> {
  const names = new Map(Object.keys(model.parameters.shape).map((name) => [optionName(name), name]));
  const values: Record<string, unknown> = {};
  const problems: InputError[] = [];
  for (const [given, value] of Object.entries(raw)) {
    if (value === undefined) continue;
    const option = optionName(given);
    const name = names.get(option);
    try {
      if (name === undefined) throw unknownName(model.name, given, [...names.keys()]);
      if (Object.hasOwn(values, name))
        throw new InputError(
          'parameter-twice',
          `${option} is given twice: leave one spelling of it out`,
          sizeAt(option),
        );
      values[name] = undefined;
      values[name] = readNamed(option, () =>
        readValue(parameterMeta(name, model.parameters.shape[name]!), value, units),
      );
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      problems.push(error);
    }
  }
  if (problems.length > 0) throw together(problems);
  return model.parameters.parse({ ...starting(model, round), ...values });
}

/** Defaults that are others in these units than the schema's own. */
const starting = (model: Pick<Model, 'parameters'>, units: Units): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(model.parameters.shape).flatMap(([name, schema]) => {
      const meta = parameterMeta(name, schema);
      const value = defaultIn(meta, units);
      return value === meta.default ? [] : [[name, value]];
    }),
  );

function readNamed<T>(option: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw error instanceof InputError
      ? new InputError(error.code, `${option} ${error.message}`, sizeAt(option))
      : error;
  }
}

const unknownName = (model: string, given: string, known: readonly string[]): InputError =>
  new InputError(
    'parameter-unknown',
    `${model} has no parameter '${given}'${didYouMean(optionName(given), known)}`,
  );

function together(problems: readonly InputError[]): InputError {
  const [only] = problems;
  return problems.length === 1
    ? only!
    : new InputError('parameters-refused', problems.map((problem) => problem.message).join('\n'), problems);
}

const sizeAt = (name: string): Place => ({ of: 'size', name });

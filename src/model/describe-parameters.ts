import { speaker, type Units } from '../length/index.js';
import { defaultIn } from './default-in.js';
import type { Model } from './model.js';
import { optionName } from './option-name.js';
import { type Kind, type ParameterMeta, parameterMeta } from './parameter.js';
import { allowed, printValue } from './read-value.js';

/** A parameter in words, in the person's units. */
export interface ParameterRow {
  /** kebab-case */
  readonly option: string;
  /** What it is called in a sentence. */
  readonly label: string;
  readonly kind: Kind;
  /** The value, or how it is worked out. */
  readonly default: string;
  readonly range: string;
  /** The words of a choice; none for another kind. */
  readonly choices: readonly string[];
  readonly help: string;
}

/** A value with its unit, as reports list it. */
export interface ParameterValue {
  readonly value: string | number | boolean;
  readonly unit: 'mm' | 'deg' | 'kg' | '';
}

/** What a parameter is called in a sentence. */
export const labelOf = (name: string, { label }: Pick<ParameterMeta, 'label'>): string =>
  label ?? optionName(name).replaceAll('-', ' ');

/** A model's parameters in the order it lists them. */
export const describeParameters = (model: Pick<Model, 'parameters'>, units: Units): readonly ParameterRow[] =>
  metas(model).map(([name, meta]) => ({
    option: optionName(name),
    label: labelOf(name, meta),
    kind: meta.kind,
    default: defaultText(meta, units),
    range: allowed(meta, units),
    choices: (meta.choices ?? []).map(String),
    help: meta.help,
  }));

/**
 * The values of a run with their units; a derived parameter that was not given is left out.
 *
 * @param values mm and degrees, as `readParameters` returns them
 */
export const parameterValues = (
  model: Pick<Model, 'parameters'>,
  values: Readonly<Record<string, unknown>>,
): Readonly<Record<string, ParameterValue>> =>
  Object.fromEntries(
    metas(model)
      .filter(([name]) => values[name] !== undefined)
      .map(([name, meta]) => [
        name,
        { value: values[name] as ParameterValue['value'], unit: unitOf(meta.kind) },
      ]),
  );

/** How a derived parameter is worked out, in the person's units; empty for one with a default. */
export function derivedText({ derived = '' }: ParameterMeta, units: Units): string {
  return typeof derived === 'string' ? derived : derived(speaker(units));
}

function defaultText(meta: ParameterMeta, units: Units): string {
  const value = defaultIn(meta, units);
  return value === undefined ? derivedText(meta, units) : printValue(meta, value, units);
}

const metas = (model: Pick<Model, 'parameters'>): (readonly [string, ParameterMeta])[] =>
  Object.entries(model.parameters.shape).map(([name, schema]) => [name, parameterMeta(name, schema)]);

const UNITS: Partial<Record<Kind, ParameterValue['unit']>> = { length: 'mm', angle: 'deg', mass: 'kg' };

const unitOf = (kind: Kind): ParameterValue['unit'] => UNITS[kind] ?? '';

import { INCH, trimmed, type Units } from '../../length/index.js';
import {
  describeParameters,
  type Model,
  type ParameterMeta,
  type ParameterRow,
  parameterMeta,
  printValue,
  readParameters,
  type Tools,
} from '../../model/index.js';

/** A size or a choice as a page lets it be changed: a parameter in words, and where it stands. */
export interface SizeRow extends ParameterRow {
  /** As it is typed; empty when it is worked out and cannot be told beforehand. */
  readonly text: string;
  /** The person gave it. */
  readonly given: boolean;
  /** How it is worked out when it is not given; empty when it has a default. */
  readonly follows: string;
  /** Of a number: where it stands, the ends of its range, and its finest move; mm, degrees, kg or a count. */
  readonly slide?: Slide;
}

export interface Slide {
  readonly least: number;
  readonly most: number;
  readonly step: number;
  /** Undefined when it is worked out and cannot be told beforehand. */
  readonly value: number | undefined;
}

/**
 * Every parameter of a design as a page lets it be changed.
 *
 * @param given texts by option name
 * @throws InputError when they cannot be read
 */
export function sizeForm(
  model: Model,
  given: Readonly<Record<string, string>>,
  units: Units,
  tools?: Tools,
): readonly SizeRow[] {
  const full: Readonly<Record<string, unknown>> = model.complete(readParameters(model, given, units), tools);
  const metas = Object.entries(model.parameters.shape).map(
    ([name, schema]) => [name, parameterMeta(name, schema)] as const,
  );
  return describeParameters(model, units).map((row, i) => {
    const [name, meta] = metas[i]!;
    const value = full[name] as string | number | boolean | undefined;
    return {
      ...row,
      text: value === undefined ? '' : printValue(meta, value, units),
      given: given[row.option] !== undefined,
      follows: meta.derived === undefined ? '' : row.default,
      ...(meta.min !== undefined &&
        meta.max !== undefined && {
          slide: {
            least: meta.min,
            most: meta.max,
            step: stepOf(meta, units),
            value: typeof value === 'number' ? value : undefined,
          },
        }),
    };
  });
}

/** Half a millimetre or a 64th of an inch; half a degree; one. */
const stepOf = ({ kind, min = 0, max = 0 }: ParameterMeta, units: Units): number => {
  if (kind === 'angle') return 0.5;
  if (kind !== 'length') return 1;
  // what ranges over a few millimetres is a fit
  if (max - min <= 5) return 0.05;
  return units === 'mm' ? 0.5 : INCH / 64;
};

/** A value as a text that reads back as the very same number. */
export function exactText(meta: ParameterMeta, value: string | number | boolean, units: Units): string {
  if (typeof value !== 'number' || meta.kind === 'count') return printValue(meta, value, 'mm');
  if (meta.kind === 'length') return `${trimmed(value, 6)} mm`;
  return meta.kind === 'angle' ? `${trimmed(value, 6)} deg` : printValue(meta, value, units);
}

import { INCH, trimmed, type Units } from '../length/index.js';
import { type Model, optionName, type ParameterMeta, parameterMeta } from '../model/index.js';
import type { Values } from './verdict.js';

/** A numeric parameter that may be moved, where it stands now; mm, degrees or a count. */
export interface Knob {
  readonly name: string;
  readonly meta: ParameterMeta & { readonly min: number; readonly max: number };
  readonly value: number;
  /** The person gave it: it is the first to be moved. */
  readonly given: boolean;
}

/** Smallest move worth telling, and the grid a cure is put on: half a millimetre or a 32nd, half a degree, one. */
const gridOf = ({ kind }: ParameterMeta, units: Units): number =>
  kind === 'count' ? 1 : kind === 'angle' || units === 'mm' ? 0.5 : INCH / 32;

/** Every size with a value, the given ones first; how heavy a person is is no size. */
export const knobs = (model: Model, values: Values, given: readonly string[]): readonly Knob[] =>
  Object.entries(model.parameters.shape)
    .map(([name, schema]) => ({ name, meta: parameterMeta(name, schema), value: values[name] }))
    .flatMap(({ name, meta, value }): Knob[] =>
      typeof value === 'number' &&
      meta.min !== undefined &&
      meta.max !== undefined &&
      meta.kind !== 'choice' &&
      meta.kind !== 'mass'
        ? [{ name, meta: { ...meta, min: meta.min, max: meta.max }, value, given: given.includes(name) }]
        : [],
    )
    .toSorted((a, b) => Number(b.given) - Number(a.given));

/** A value on the grid, no nearer to where the knob stands; undefined out of its range. */
export function onGrid(knob: Knob, value: number, units: Units): number | undefined {
  const grid = gridOf(knob.meta, units);
  const steps = value / grid;
  // a figure that stands on the grid but for its last bits stays there
  const near = Math.round(steps);
  const whole =
    Math.abs(steps - near) < 1e-6 ? near : value > knob.value ? Math.ceil(steps) : Math.floor(steps);
  // snapped, so that 0.5 · 17 and 8.5 are one number
  const found = Number((whole * grid).toFixed(9));
  return found < knob.meta.min || found > knob.meta.max || found === knob.value ? undefined : found;
}

/** How far a knob is moved to see what it does. */
export const nudge = ({ meta, value }: Knob): number => {
  const step = meta.kind === 'angle' ? 0.5 : 1;
  return value + step <= meta.max ? step : -step;
};

/** Values further and further from where a knob stands, both ways, to the ends of its range. */
export function outwards(knob: Knob, units: Units): readonly number[] {
  const grid = gridOf(knob.meta, units);
  const found: number[] = [];
  for (
    let step = grid;
    step <= knob.meta.max - knob.meta.min + grid;
    step = Math.max(step * 1.3, step + grid)
  ) {
    for (const side of [-1, 1]) {
      const end = side < 0 ? knob.meta.min : knob.meta.max;
      const wished = knob.value + side * step;
      const value = onGrid(knob, (wished - end) * side > 0 ? end : wished, units);
      if (value !== undefined && !found.includes(value)) found.push(value);
    }
  }
  return found;
}

/** How far a value lies from where the knob stands, as a share of its range. */
export const shareMoved = ({ meta, value }: Knob, to: number): number =>
  Math.abs(to - value) / (meta.max - meta.min);

/** As it is typed: `--rake 8.5`, `--height 9-1/32in`. */
export function asTyped({ name, meta }: Pick<Knob, 'name' | 'meta'>, value: number, units: Units): string {
  const option = `--${optionName(name)}`;
  if (meta.kind === 'angle') return `${option} ${trimmed(value, 2)}deg`;
  if (meta.kind !== 'length') return `${option} ${trimmed(value, 0)}`;
  return units === 'mm' ? `${option} ${trimmed(value, 2)}mm` : `${option} ${trimmed(value / INCH, 5)}in`;
}

/** Every other word of each choice, as it would be chosen and typed. */
export const otherChoices = (
  model: Model,
  values: Values,
): readonly { readonly parameter: string; readonly value: string; readonly typed: string }[] =>
  Object.entries(model.parameters.shape).flatMap(([name, schema]) =>
    (parameterMeta(name, schema).choices ?? [])
      .filter((word) => typeof word === 'string' && word !== values[name])
      .map(String)
      .map((value) => ({
        parameter: name,
        value,
        typed: `--${optionName(name)} ${value.includes(' ') ? `'${value}'` : value}`,
      })),
  );

import { INCH, type Units } from '../length/index.js';
import { labelOf, type ParameterMeta } from '../model/index.js';
import type { Knob } from '../verdict/index.js';

/** A size that may be moved, where it stands, and how finely its range is told; mm, degrees or a count. */
export interface Dimension {
  /** camelCase name of the parameter. */
  readonly name: string;
  /** What it is called in a sentence. */
  readonly label: string;
  readonly kind: ParameterMeta['kind'];
  readonly value: number;
  /** Ends of its stated range. */
  readonly least: number;
  readonly most: number;
  /** Ends of what is sound are found to this. */
  readonly step: number;
}

/** Half a millimetre or a 64th of an inch; a tenth of a degree; one. */
export const dimensionOf = ({ name, value, meta }: Knob, units: Units): Dimension => ({
  name,
  label: labelOf(name, meta),
  kind: meta.kind,
  value,
  least: meta.min,
  most: meta.max,
  step: meta.kind === 'count' ? 1 : meta.kind === 'angle' ? 0.1 : units === 'mm' ? 0.5 : INCH / 64,
});

/** Towards the smaller values, or the larger. */
export type Side = -1 | 1;

/** How many steps there are from the chosen value to the stated end on a side. */
export function stepsTo({ least, most, value, step }: Dimension, side: Side): number {
  const end = side < 0 ? least : most;
  const whole = Math.floor((Math.abs(end - value) + onStep(value, step, side)) / step - 1e-9);
  return Math.max(0, whole + (Math.abs(end - value) < 1e-9 ? 0 : 1));
}

/**
 * The value so many steps from the chosen one: on round figures, the stated end last.
 *
 * @param steps 0 is the chosen value itself
 */
export function valueAt(dimension: Dimension, side: Side, steps: number): number {
  const { least, most, value, step } = dimension;
  if (steps === 0) return value;
  if (steps >= stepsTo(dimension, side)) return side < 0 ? least : most;
  return Number((value - side * onStep(value, step, side) + side * steps * step).toFixed(9));
}

/** How far the round figure behind a value lies, seen to that side. */
function onStep(value: number, step: number, side: Side): number {
  const steps = value / step;
  const near = Math.round(steps);
  const round = Math.abs(steps - near) < 1e-6 ? near : side > 0 ? Math.floor(steps) : Math.ceil(steps);
  return Math.abs(value - round * step);
}

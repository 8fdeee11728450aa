import type * as z from 'zod';
import { canBeBuilt } from './can-be-built.js';
import type { Model, Tools } from './model.js';
import { type ParameterMeta, parameterMeta } from './parameter.js';

/** Between which values a size can be had; mm and degrees. */
export interface Limits {
  readonly least: number;
  readonly most: number;
}

type Values = Readonly<Record<string, unknown>>;

/**
 * The limits of every size round the value it has, with what was given left as it is and what was not given following. A design within
 * them can be put together; whether it is sound the checks tell.
 *
 * @param values as `readParameters` returns them
 * @throws TenonwrightError when the design cannot be put together as it is
 * @example limitsOf(frame, readParameters(frame, { railWidth: 90, width: 400 }, 'mm')).get('railWidth') // 40 to 175
 */
export function limitsOf(model: Model, values: Values, tools?: Tools): ReadonlyMap<string, Limits> {
  const asked = values as z.infer<Model['parameters']>;
  model.build(asked, tools);
  const full = model.complete(asked, tools) as Values;
  const builds = canBeBuilt(model, values, tools);
  return new Map(
    Object.entries(model.parameters.shape).flatMap(([name, schema]) => {
      const meta = parameterMeta(name, schema);
      const now = full[name];
      if (meta.min === undefined || meta.max === undefined || typeof now !== 'number') return [];
      const end = (far: number) => farthest(meta, now, far, (value) => builds(name, value));
      return [[name, { least: end(meta.min), most: end(meta.max) }] as const];
    }),
  );
}

/** From a value that can be had towards an end of the range: how far it goes, to a tenth. */
function farthest(
  { kind }: ParameterMeta,
  now: number,
  end: number,
  builds: (value: number) => boolean,
): number {
  if (builds(end)) return end;
  const step = kind === 'count' ? 1 : 0.1;
  let [sound, unsound] = [now, end];
  while (Math.abs(unsound - sound) > step) {
    const steps = Math.round(Math.abs(unsound - sound) / step);
    if (steps < 2) break;
    const middle =
      Math.round((sound + Math.sign(unsound - sound) * step * Math.floor(steps / 2)) / step) * step;
    if (middle === sound || middle === unsound) break;
    if (builds(middle)) sound = middle;
    else unsound = middle;
  }
  return Math.round(sound * 10) / 10 === now ? now : Math.round(sound * 10) / 10;
}

import { InputError } from '../../src/errors.js';
import type { Vec2 } from '../../src/frame/index.js';
import { circle, type Profile, rectangle } from '../../src/profile/index.js';
import type { JigValues } from './jig-values.js';

/** The outline of the router's base about the cutter, seen from above; mm. */
export interface RouterBase {
  readonly outline: Profile;
  /** Furthest reach from the cutter along the rails, and across them. */
  readonly halfLength: number;
  readonly halfWidth: number;
  /** How far a point lies inside the outline; negative outside. */
  readonly inset: (at: Vec2) => number;
}

/** @throws InputError when the flat lies outside the round it is cut from */
export function routerBase(v: JigValues): RouterBase {
  if (v.routerBase === 'rectangle') {
    const [halfLength, halfWidth] = [v.baseLength / 2, v.baseWidth / 2];
    return {
      outline: rectangle({ x: -halfLength, y: -halfWidth, length: v.baseLength, width: v.baseWidth }),
      halfLength,
      halfWidth,
      inset: ([x, y]) => Math.min(halfLength - Math.abs(x), halfWidth - Math.abs(y)),
    };
  }
  const radius = v.baseDiameter / 2;
  const round = {
    halfLength: radius,
    halfWidth: radius,
    inset: ([x, y]: Vec2) => radius - Math.hypot(x, y),
  };
  if (v.routerBase === 'round') return { ...round, outline: circle({ diameter: v.baseDiameter }) };
  if (v.baseFlat >= radius)
    throw new InputError(
      'base-flat',
      (say) =>
        `router base: its flat is ${say.fines(v.baseFlat, radius)[0]} from the cutter; it must be less than half the diameter, ${say.fines(v.baseFlat, radius)[1]}: measure both again, or choose round`,
    );
  return {
    ...round,
    outline: withFlat(radius, v.baseFlat),
    inset: ([x, y]) => Math.min(radius - Math.hypot(x, y), y + v.baseFlat),
  };
}

/** A circle less its segment beyond the flat, which faces the person. */
function withFlat(radius: number, flat: number): Profile {
  const half = Math.sqrt(radius ** 2 - flat ** 2);
  const included = 2 * Math.PI - 2 * Math.acos(flat / radius);
  return [
    { x: half, y: -flat, bulge: Math.tan(included / 4) },
    { x: -half, y: -flat, bulge: 0 },
  ];
}

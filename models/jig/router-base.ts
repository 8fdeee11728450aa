import { InputError } from '../../src/errors.js';
import type { Vec2 } from '../../src/frame/index.js';
import type { Units } from '../../src/length/index.js';
import { circle, type Profile, rectangle } from '../../src/profile/index.js';
import type { JigValues } from './jig-values.js';
import { BASE_FLAT } from './usual.js';

/** The outline of the router's base about the cutter, seen from above; mm. */
export interface RouterBase {
  readonly outline: Profile;
  /** Furthest reach from the cutter along the rails, and across them. */
  readonly halfLength: number;
  readonly halfWidth: number;
  /** How far a point lies inside the outline; negative outside. */
  readonly inset: (at: Vec2) => number;
}

/** @throws InputError when a flat lies outside the round it is cut from */
export function routerBase(v: JigValues, units: Units): RouterBase {
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
  const flats = flatsOf(v, units);
  for (const { at } of flats)
    if (at >= radius)
      throw new InputError(
        'base-flat',
        (say) =>
          `router base: its flat is ${say.fines(at, radius)[0]} from the cutter; it must be less than half the diameter, ${say.fines(at, radius)[1]}: measure both again, or choose round`,
      );
  const reach = (...deg: readonly number[]) =>
    Math.max(...deg.map((one) => flats.find(({ deg: towards }) => towards === one)?.at ?? radius));
  return {
    outline: withFlats(radius, flats),
    halfLength: reach(0, 180),
    halfWidth: reach(90, 270),
    inset: (at) => Math.min(round.inset(at), ...flats.map((flat) => flat.at - along(at, flat.deg))),
  };
}

/** A flat: the direction it faces, from the rails and counter-clockwise seen from above, and its distance from the cutter. */
interface Flat {
  readonly deg: number;
  readonly at: number;
}

/** In the order they face. */
function flatsOf(
  { baseFlat, baseFlatFar: far, baseFlatSides: sides }: JigValues,
  units: Units,
): readonly Flat[] {
  const near = baseFlat ?? (far === undefined && sides === undefined ? BASE_FLAT[units] : undefined);
  return [sides, far, sides, near].flatMap((at, i) => (at === undefined ? [] : [{ deg: 90 * i, at }]));
}

const along = ([x, y]: Vec2, deg: number): number => {
  const turn = (deg * Math.PI) / 180;
  return x * Math.cos(turn) + y * Math.sin(turn);
};

/** A circle less its segments beyond the flats: between two flats an arc, or the corner where they meet inside the circle. */
function withFlats(radius: number, flats: readonly Flat[]): Profile {
  const half = ({ at }: Flat) => (Math.acos(at / radius) * 180) / Math.PI;
  const onCircle = (deg: number, bulge: number) => {
    const turn = (deg * Math.PI) / 180;
    return { x: radius * Math.cos(turn), y: radius * Math.sin(turn), bulge };
  };
  return flats.flatMap((flat, i) => {
    const next = flats[(i + 1) % flats.length]!;
    const to = next.deg + (i + 1 < flats.length ? 0 : 360) - half(next);
    const from = flat.deg + half(flat);
    if (from < to) return [onCircle(from, Math.tan(((to - from) * Math.PI) / 720)), onCircle(to, 0)];
    const [c, s] = [Math.cos((flat.deg * Math.PI) / 180), Math.sin((flat.deg * Math.PI) / 180)];
    return [{ x: flat.at * c - next.at * s, y: flat.at * s + next.at * c, bulge: 0 }];
  });
}

import type { Vec2 } from '../../frame/index.js';
import { circle, regionOf } from '../../profile/index.js';
import type { JigAtHand } from './jig-at-hand.js';
import type { RouterAtHand } from './shop.js';

/** What slides on the work, seen from above about the cutter; mm. */
export interface Travelling {
  readonly what: 'jig plate' | 'router base';
  readonly along: number;
  readonly across: number;
  readonly outline: readonly Vec2[];
  /** Between the work and the router's own base: the plate or nothing. */
  readonly thickness: number;
}

/** The jig's plate. */
export const plateOf = (jig: JigAtHand): Travelling => ({
  what: 'jig plate',
  along: jig.plate.along,
  across: jig.plate.across,
  outline: box(jig.plate.along, jig.plate.across),
  thickness: jig.plate.thickness,
});

/** The router's bare base. Its near and far side count as the nearer of both: a mortise does not say which of them lies where. */
export function baseOf({ base }: RouterAtHand): Travelling {
  const { near, far, sides } = edgesOf(base);
  const across = Math.min(near, far);
  return {
    what: 'router base',
    along: 2 * sides,
    across: 2 * Math.max(near, far),
    outline: outlineOf(base, { near: across, far: across, sides }),
    thickness: 0,
  };
}

/** The bare base as it stands when its far side lies towards +y (1) or -y (-1) of the mortise. */
export function standingBase({ base }: RouterAtHand, far: 1 | -1): readonly Vec2[] {
  const edges = edgesOf(base);
  return outlineOf(base, far > 0 ? edges : { ...edges, near: edges.far, far: edges.near });
}

/** From the cutter to the edge of the base that runs along a guide board beyond the mortise; a round one turned to be farthest, mm. */
export function guidedEdge({ base, eccentricity = 0 }: RouterAtHand): number {
  // a flat is measured from the cutter itself
  return edgesOf(base).far + (base.flats?.far === undefined ? eccentricity : 0);
}

type Base = RouterAtHand['base'];
type Edges = Readonly<Record<'near' | 'far' | 'sides', number>>;

const edgesOf = ({ along, across, flats = {} }: Base): Edges => ({
  near: Math.min(across / 2, flats.near ?? across),
  far: Math.min(across / 2, flats.far ?? across),
  sides: Math.min(along / 2, flats.sides ?? along),
});

/** What stands beyond a flat is brought back on to it. */
const outlineOf = ({ shape, along, across }: Base, { near, far, sides }: Edges): readonly Vec2[] =>
  shape === 'rectangle'
    ? box(along, across)
    : regionOf(circle({ diameter: along }), 0.1)[0]!.map(
        ([x, y]): Vec2 => [Math.max(-sides, Math.min(sides, x)), Math.max(-near, Math.min(far, y))],
      );

/**
 * Stops from the mortise's centre, mm.
 *
 * @param length of the mortise over its round ends
 * @param along what travels against the stops, in that direction
 * @param cutter diameter
 * @example stopDistance(40, 150, 10) // 90
 */
export const stopDistance = (length: number, along: number, cutter: number): number =>
  length / 2 + along / 2 - cutter / 2;

const box = (along: number, across: number): readonly Vec2[] => [
  [-along / 2, -across / 2],
  [along / 2, -across / 2],
  [along / 2, across / 2],
  [-along / 2, across / 2],
];

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

/** The router's bare base; a round one with a flat counts as round. */
export const baseOf = ({ base }: RouterAtHand): Travelling => ({
  what: 'router base',
  along: base.along,
  across: base.across,
  outline: base.shape === 'rectangle' ? box(base.along, base.across) : round(base.along, base.across),
  thickness: 0,
});

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

const round = (along: number, across: number): readonly Vec2[] =>
  regionOf(circle({ diameter: along }), 0.1)[0]!.map(([x, y]): Vec2 => [x, (y * across) / along]);

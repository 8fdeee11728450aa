import { InputError } from '../../src/errors.js';
import { boltCircle, fromDistances, fromPoints, type HolePattern } from '../../src/mounting/index.js';
import { boltLengthFrom, boltLengthUpTo, type Fastener, fastener } from '../../src/tables/index.js';
import type { JigValues } from './jig-values.js';
import { OPENING_WALL, SEAT_AIR, THREAD_DIAMETERS } from './practice.js';
import type { RouterBase } from './router-base.js';

/** How the router is held from below. mm */
export interface Mounting {
  readonly pattern: HolePattern;
  readonly screw: Fastener;
  readonly screwLength: number;
  /** Of the countersink at the sliding face. */
  readonly sinkDiameter: number;
}

/** @throws InputError when a hole misses the base, breaks into the opening, or its countersink is deeper than the plate */
export function mounting(v: JigValues, base: RouterBase): Mounting {
  const screw = fastener(v.screwSize);
  const head = screw.countersunkHead;
  const slope = Math.tan((head.angleDeg * Math.PI) / 360);
  const sinkDiameter = head.diameter + 2 * (v.headBelow * slope + SEAT_AIR);
  const sinkDepth = (sinkDiameter - screw.clearanceHole) / 2 / slope;
  if (sinkDepth >= v.plateThickness)
    throw new InputError(
      'countersink-through-plate',
      (say) =>
        `plate: the countersinks for ${v.screwSize} screws are ${say.length(sinkDepth)} deep, and the plate is ${say.fine(v.plateThickness)} thick: use a thicker plate or thinner screws`,
    );
  const pattern = patternOf(v);
  for (const { name, at } of pattern.holes) {
    const inset = base.inset(at);
    if (inset < screw.diameter)
      throw new InputError(
        'mounting-hole-off-base',
        (say) =>
          `mounting hole ${name} at (${at.map(say.length).join(', ')}) lies ${inset < 0 ? `${say.length(-inset)} outside` : `${say.length(inset)} inside`} the edge of the router base; it must be at least ${say.fine(screw.diameter)} inside: check its position and the size of the base`,
      );
    const wall = Math.hypot(...at) - (sinkDiameter + v.bitOpening) / 2;
    if (wall < OPENING_WALL)
      throw new InputError(
        'mounting-hole-in-opening',
        (say) =>
          `mounting hole ${name} leaves ${say.lengths(Math.max(wall, 0), OPENING_WALL)[0]} of wood to the cutter's opening; it must leave at least ${say.lengths(Math.max(wall, 0), OPENING_WALL)[1]}: make the opening smaller or check the hole's position`,
      );
  }
  return { pattern, screw, sinkDiameter, screwLength: v.screwLength ?? screwLength(v, screw) };
}

function patternOf(v: JigValues): HolePattern {
  if (v.mounting === 'points') return fromPoints(v.holePoints);
  if (v.mounting === 'distances')
    return fromDistances(v.holeDistances, { mirror: v.mirror, turnDeg: v.holeStart });
  return boltCircle({ diameter: v.holeCircle, count: v.holeCount, startDeg: v.holeStart });
}

/** A countersunk screw is measured over its head, which starts `headBelow` inside the plate. */
function screwLength(v: JigValues, screw: Fastener): number {
  const toBase = v.plateThickness - v.headBelow;
  const longest = boltLengthUpTo(screw.system, toBase + v.baseThickness) ?? 0;
  const least = toBase + THREAD_DIAMETERS * screw.diameter;
  // a base too thin for any standard screw takes one that stands out of it: told by the checks
  return longest >= least ? longest : (boltLengthFrom(screw.system, least) ?? least);
}

import type { Vec2 } from '../frame/index.js';
import { SAGITTA, SAME_POINT } from '../tolerances.js';
import type { Profile } from './profile.js';
import { directionAt, pointAlong, segments } from './segment.js';
import { counterClockwise } from './turn.js';

/** A corner that a cutter cannot reach into, mm: a sharp one has radius 0; `at` is the corner or the middle of the arc. */
export interface TightCorner {
  readonly at: Vec2;
  readonly radius: number;
}

/**
 * Corners too tight for a cutter (or guide bush) of a radius that travels outside or inside an outline.
 *
 * Outside (the edge of a board) they are the ones that point into the wood; inside (an opening) the ones that point out of the hole.
 * A change of direction so slight that the cutter leaves less than the facet allowance of 0.005 mm is no corner.
 *
 * @param radius of the cutter, mm
 * @example tightCorners(rectangle({ length: 40, width: 20 }), 6, 'inside').length // 4
 */
export function tightCorners(
  profile: Profile,
  radius: number,
  side: 'outside' | 'inside',
): readonly TightCorner[] {
  const pieces = segments(counterClockwise(profile));
  const towardCutter = side === 'outside' ? -1 : 1;
  return pieces.flatMap((piece, i) => {
    const found: TightCorner[] = [];
    const [inX, inY] = directionAt(pieces.at(i - 1)!, 1);
    const [outX, outY] = directionAt(piece, 0);
    const turn = Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY) * towardCutter;
    const left = radius * (1 / Math.cos(turn / 2) - 1);
    if (turn > 0 && left > SAGITTA) found.push({ at: piece.from, radius: 0 });
    if (piece.kind === 'arc' && piece.bulge * towardCutter > 0 && piece.radius < radius - SAME_POINT)
      found.push({ at: pointAlong(piece, 1 / 2), radius: piece.radius });
    return found;
  });
}

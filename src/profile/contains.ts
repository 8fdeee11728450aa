import type { Vec2 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import { distanceToSegment } from './distance.js';
import type { Profile } from './profile.js';
import { type Segment, segments } from './segment.js';

/**
 * Where a point lies, arcs taken as arcs; `on` within 1e-6 mm of the outline. The outline's direction does not matter.
 *
 * The outline's winding number about the point is that of the polygon of its chords plus one for every arc whose circular
 * segment, between chord and arc, holds the point.
 *
 * @example contains(circle({ diameter: 10 }), [4.9, 0]) // 'inside'
 */
export function contains(profile: Profile, point: Vec2): 'inside' | 'outside' | 'on' {
  const pieces = segments(profile);
  if (pieces.some((piece) => distanceToSegment(piece, point) <= SAME_POINT)) return 'on';
  const winding = pieces.reduce(
    (sum, piece) => sum + chordWinding(piece, point) + arcWinding(piece, point),
    0,
  );
  return winding === 0 ? 'outside' : 'inside';
}

/** Crossing of the chord by a ray from the point to the right: +1 upward, -1 downward. */
function chordWinding(piece: Segment, point: Vec2): number {
  const [a, b, y] = [piece.from[1], piece.to[1], point[1]];
  if (a <= y === b <= y) return 0;
  const upward = b > a;
  return leftOf(piece, point) === upward ? (upward ? 1 : -1) : 0;
}

function arcWinding(piece: Segment, point: Vec2): number {
  if (piece.kind === 'line') return 0;
  if (Math.hypot(point[0] - piece.centre[0], point[1] - piece.centre[1]) >= piece.radius) return 0;
  const turn = piece.bulge > 0 ? 1 : -1;
  return leftOf(piece, point) === turn < 0 ? turn : 0;
}

/** The side of the chord; a point on it counts as shifted a little to the right and less upwards, as `<=` does in the ray test. */
function leftOf(piece: Segment, [x, y]: Vec2): boolean {
  const [dx, dy] = [piece.to[0] - piece.from[0], piece.to[1] - piece.from[1]];
  const side = dx * (y - piece.from[1]) - dy * (x - piece.from[0]);
  return (side || -dy || dx) > 0;
}

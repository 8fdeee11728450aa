import { add, cross, dot, length, scale, subtract, type Vec3 } from '../frame/index.js';
import { GAP_SETTLED } from '../tolerances.js';
import type { Pocket } from './pockets.js';

/** Far more steps than two pockets ever need. */
const STEPS = 200;

/** The point of a pocket that lies farthest in a direction. */
export function farthest({ at, length: long, width, depth }: Pocket, way: Vec3): Vec3 {
  const [dx, dy] = [dot(way, at.x), dot(way, at.y)];
  const flat = Math.hypot(dx, dy);
  const round = flat > 0 ? width / 2 / flat : 0;
  const along = Math.sign(dx) * ((long - width) / 2) + dx * round;
  const down = dot(way, at.z) < 0 ? -depth : 0;
  return add(at.origin, add(add(scale(at.x, along), scale(at.y, dy * round)), scale(at.z, down)));
}

/** How far a pocket reaches along a unit direction, from its least to its greatest. */
export const reachAlong = (pocket: Pocket, way: Vec3): readonly [from: number, to: number] => [
  dot(farthest(pocket, scale(way, -1)), way),
  dot(farthest(pocket, way), way),
];

/**
 * The wood between two pockets of one frame, mm; 0 where they meet.
 *
 * Pockets are convex, so their distance is that of their difference from the origin: found by walking simplices of
 * farthest points towards it (Gilbert, Johnson and Keerthi, 1988).
 */
export function pocketGap(a: Pocket, b: Pocket): number {
  let simplex: readonly Vec3[] = [];
  let nearest: Vec3 = subtract(middle(a), middle(b));
  if (length(nearest) === 0) return 0;
  for (let step = 0; step < STEPS; step += 1) {
    const away = scale(nearest, -1);
    const corner = subtract(farthest(a, away), farthest(b, nearest));
    const size = length(nearest);
    if (simplex.length > 0 && size - dot(corner, nearest) / size < GAP_SETTLED) return size;
    simplex = nearestFace([...simplex, corner]);
    nearest = nearestOn(simplex)!;
    if (simplex.length === 4 || length(nearest) < GAP_SETTLED) return 0;
  }
  return length(nearest);
}

/** True when two pockets may come nearer than `reach`: by the balls round them, which costs next to nothing. */
export function pocketsNear(a: Pocket, b: Pocket, reach: number): boolean {
  return length(subtract(middle(a), middle(b))) < ball(a) + ball(b) + reach;
}

const middle = ({ at, depth }: Pocket): Vec3 => add(at.origin, scale(at.z, -depth / 2));
const ball = ({ length: long, width, depth }: Pocket): number => Math.hypot(long, width, depth) / 2;

/** The corners of the part of a simplex that is nearest to the origin: all of them when it holds the origin. */
function nearestFace(corners: readonly Vec3[]): readonly Vec3[] {
  let best: readonly Vec3[] = corners.slice(-1);
  let least = length(best[0]!);
  for (let chosen = 1; chosen < 1 << corners.length; chosen += 1) {
    const face = corners.filter((_, i) => chosen & (1 << i));
    const point = nearestOn(face);
    if (point && length(point) < least - 1e-12) {
      best = face;
      least = length(point);
    }
  }
  return best;
}

/** Where the plane of all corners of a face comes nearest to the origin; undefined when that is not within the face. */
function nearestOn(face: readonly Vec3[]): Vec3 | undefined {
  const [p, q, r, s] = face;
  if (!q) return p;
  const sides = [q, r, s].filter((corner) => corner !== undefined).map((corner) => subtract(corner, p!));
  const shares = solved(sides, p!);
  if (!shares || shares.some((share) => share < 0) || shares.reduce((sum, share) => sum + share, 0) > 1) {
    return undefined;
  }
  return shares.reduce((point, share, i) => add(point, scale(sides[i]!, share)), p!);
}

/** Shares of one, two or three sides that lead from a corner to the foot of the origin's perpendicular. */
function solved(sides: readonly Vec3[], from: Vec3): readonly number[] | undefined {
  const [u, v, w] = sides;
  const [a, b] = [dot(u!, u!), -dot(u!, from)];
  if (!v) return a > 0 ? [b / a] : undefined;
  if (!w) {
    const [c, d, e] = [dot(u!, v), dot(v, v), -dot(v, from)];
    const whole = a * d - c * c;
    return whole > 1e-12 * a * d ? [(b * d - c * e) / whole, (a * e - c * b) / whole] : undefined;
  }
  // three sides fill space: Cramer's rule for the origin itself
  const whole = dot(u!, cross(v, w));
  if (Math.abs(whole) < 1e-12) return undefined;
  const to = scale(from, -1);
  return [dot(to, cross(v, w)) / whole, dot(u!, cross(to, w)) / whole, dot(u!, cross(v, to)) / whole];
}

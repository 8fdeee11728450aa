import { ProfileError } from '../errors.js';
import { spanOf, type Vec2 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import type { Region } from './region.js';

/** A rectangle in any direction, mm: `along` is the unit direction of its length, with x above 0, or straight up. */
export interface MinimumRectangle {
  readonly centre: Vec2;
  readonly along: Vec2;
  /** The longer side. */
  readonly length: number;
  readonly width: number;
}

/**
 * The rectangle of least area around a region: one of its sides lies on a side of the convex hull.
 *
 * Among equal ones, and for a square, the direction nearest to a preferred one is taken.
 *
 * @param prefer any length; X when left out
 * @throws ProfileError for a region without points
 * @example minimumRectangle(regionOf(rotate(rectangle({ length: 60, width: 20 }), 30))).length // 60
 */
export function minimumRectangle(region: Region, prefer: Vec2 = [1, 0]): MinimumRectangle {
  const hull = convexHull(region.flat());
  if (hull.length < 3)
    throw new ProfileError(
      'profile-empty-region',
      `minimumRectangle: the region's hull has ${hull.length} corners; it must have three or more: ask whether the region is empty first`,
    );
  return hull
    .map((from, i) => {
      const to = hull[(i + 1) % hull.length]!;
      const { centre, along, length, width } = rectangleAlong(hull, [to[0] - from[0], to[1] - from[1]]);
      const across = rightward(-along[1], along[0]);
      const square = Math.abs(length - width) <= SAME_POINT;
      return (square ? nearer(along, across, prefer) >= 0 : length > width)
        ? { centre, along, length, width }
        : { centre, along: across, length: width, width: length };
    })
    .reduce((best, next) => (better(next, best, prefer) ? next : best));
}

function better(next: MinimumRectangle, best: MinimumRectangle, prefer: Vec2): boolean {
  const gain = best.length * best.width - next.length * next.width;
  const noise = SAME_POINT * best.length;
  return gain > noise || (gain > -noise && nearer(next.along, best.along, prefer) > SAME_POINT);
}

/** More than 0 when the first direction is nearer to a preferred line than the second. */
const nearer = (one: Vec2, other: Vec2, [x, y]: Vec2): number =>
  Math.abs(one[0] * x + one[1] * y) - Math.abs(other[0] * x + other[1] * y);

/** The rectangle round points whose length, be it the longer side or not, runs along a direction of any length. */
export function rectangleAlong(hull: readonly Vec2[], [dx, dy]: Vec2): MinimumRectangle {
  const size = Math.hypot(dx, dy);
  const [ux, uy] = [dx / size, dy / size];
  const along = hull.map(([x, y]) => x * ux + y * uy);
  const across = hull.map(([x, y]) => y * ux - x * uy);
  const [minU, maxU, minV, maxV] = [
    Math.min(...along),
    Math.max(...along),
    Math.min(...across),
    Math.max(...across),
  ];
  const [u, v] = [(minU + maxU) / 2, (minV + maxV) / 2];
  const centre: Vec2 = [u * ux - v * uy, u * uy + v * ux];
  return { centre, along: rightward(ux, uy), length: maxU - minU, width: maxV - minV };
}

/** Of a direction and its opposite, the one that points right, or straight up; a direction within rounding of straight up points up. */
function rightward(x: number, y: number): Vec2 {
  const flip = Math.abs(x) <= SAME_POINT ? y < 0 : x < 0;
  return flip ? [0 - x, 0 - y] : [x + 0, y + 0];
}

/** Corners of the convex hull, counter-clockwise (monotone chain); points on its sides are left out. */
export function convexHull(points: readonly Vec2[]): readonly Vec2[] {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (ordered: readonly Vec2[]): Vec2[] => {
    const kept: Vec2[] = [];
    for (const point of ordered) {
      while (kept.length >= 2 && !turnsLeft(kept.at(-2)!, kept.at(-1)!, point)) kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

/**
 * The line round points. Their last bits are put away first: points of one upright edge whose places differ by those alone would
 * come in the wrong order, and a corner be lost.
 */
export const lineRound = (points: readonly Vec2[]): readonly Vec2[] =>
  convexHull(points.map(([x, y]): Vec2 => [snapped(x), snapped(y)]));

const snapped = (at: number): number => Math.round(at / SAME_POINT) * SAME_POINT;

/** Whether c lies left of the line from a through b by more than rounding. */
function turnsLeft(a: Vec2, b: Vec2, c: Vec2): boolean {
  const across = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  return across > (SAME_POINT / 1000) * spanOf(c[0] - a[0], c[1] - a[1]);
}

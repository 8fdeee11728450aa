import type { Vec2 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import type { Profile } from './profile.js';
import { type Segment, segments, withinArc } from './segment.js';

/** A box with its sides along the axes, mm. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The box around an outline; an arc counts with its outermost points, not only with its ends. */
export const bounds = (profile: Profile): Bounds => boundsOf(segments(profile).flatMap(extremes));

/** The box around one line or arc. */
export const segmentBounds = (piece: Segment): Bounds => boundsOf(extremes(piece));

/** The box around points. */
export function boundsOf(points: readonly Vec2[]): Bounds {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const point of points) {
    const x = point[0];
    const y = point[1];
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

/** Whether two boxes come within `gap` of each other in both directions. */
export const boundsMeet = (a: Bounds, b: Bounds, gap: number): boolean =>
  a.minX <= b.maxX + gap && b.minX <= a.maxX + gap && a.minY <= b.maxY + gap && b.minY <= a.maxY + gap;

function extremes(piece: Segment): readonly Vec2[] {
  if (piece.kind === 'line') return [piece.from, piece.to];
  const { centre, radius } = piece;
  const compass: readonly Vec2[] = [
    [centre[0] + radius, centre[1]],
    [centre[0], centre[1] + radius],
    [centre[0] - radius, centre[1]],
    [centre[0], centre[1] - radius],
  ];
  // Beside an end the end itself counts, free of rounding.
  const apart = ([x, y]: Vec2, [ex, ey]: Vec2) => Math.hypot(x - ex, y - ey) > SAME_POINT;
  const passed = compass.filter(
    (point) => apart(point, piece.from) && apart(point, piece.to) && withinArc(piece, point),
  );
  return [piece.from, piece.to, ...passed];
}

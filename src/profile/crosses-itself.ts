import type { Vec2 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import { boundsMeet, segmentBounds } from './bounds.js';
import { intersections } from './intersections.js';
import type { Profile } from './profile.js';
import { type Segment, segments } from './segment.js';

/**
 * Whether an outline meets itself anywhere but where one segment hands over to the next; arcs are compared as arcs.
 * A mere touch counts too: such an outline no longer encloses one area.
 */
export const crossesItself = (profile: Profile): boolean => ownCrossing(profile) !== undefined;

/** The first point where an outline meets itself, mm; undefined for a simple loop. */
export function ownCrossing(profile: Profile): Vec2 | undefined {
  const pieces = segments(profile);
  const boxes = pieces.map(segmentBounds);
  for (let i = 0; i < pieces.length; i++)
    for (let j = i + 1; j < pieces.length; j++) {
      if (!boundsMeet(boxes[i]!, boxes[j]!, SAME_POINT)) continue;
      const shared = handovers(pieces[i]!, pieces[j]!, i, j, pieces.length);
      const met = intersections(pieces[i]!, pieces[j]!).find(
        ([x, y]) => !shared.some((at) => Math.hypot(at[0] - x, at[1] - y) <= 2 * SAME_POINT),
      );
      if (met) return met;
    }
  return undefined;
}

function handovers(a: Segment, b: Segment, i: number, j: number, count: number): readonly Vec2[] {
  const shared: Vec2[] = [];
  if (j === i + 1) shared.push(a.to);
  if (i === 0 && j === count - 1) shared.push(b.to);
  return shared;
}

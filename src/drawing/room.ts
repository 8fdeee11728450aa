import type { Vec2 } from '../frame/index.js';
import { type Box, boxesOverlap } from './text-width.js';

/** Air kept round every text, mm. */
const AIR = 0.4;

/** What is already on a sheet, while more words look for a place. */
export interface Room {
  /** Nobody else may write here. */
  claim(box: Box): void;
  /** Words rather keep off these lines. */
  avoid(points: readonly Vec2[]): void;
  /** True when no text stands here. */
  free(box: Box): boolean;
  /** How many lines run through a box. */
  crossed(box: Box): number;
}

export function emptyRoom(): Room {
  const boxes: Box[] = [];
  const lines: (readonly [Vec2, Vec2])[] = [];
  const grown = (box: Box, by: number): Box => ({
    minX: box.minX - by,
    minY: box.minY - by,
    maxX: box.maxX + by,
    maxY: box.maxY + by,
  });
  return {
    claim: (box) => {
      boxes.push(box);
    },
    avoid: (points) => {
      points.slice(1).forEach((to, i) => {
        lines.push([points[i]!, to]);
      });
    },
    free: (box) => boxes.every((other) => !boxesOverlap(grown(box, AIR), other)),
    crossed: (box) => lines.filter(([from, to]) => runsThrough(from, to, grown(box, AIR))).length,
  };
}

/** Whether a straight line comes into a box. */
function runsThrough(from: Vec2, to: Vec2, box: Box): boolean {
  let [lo, hi] = [0, 1];
  for (const [a, d, min, max] of [
    [from[0], to[0] - from[0], box.minX, box.maxX],
    [from[1], to[1] - from[1], box.minY, box.maxY],
  ] as const) {
    if (d === 0) {
      if (a < min || a > max) return false;
      continue;
    }
    const [p, q] = [(min - a) / d, (max - a) / d];
    lo = Math.max(lo, Math.min(p, q));
    hi = Math.min(hi, Math.max(p, q));
  }
  return lo <= hi;
}

/**
 * The best of some places: free, and crossed by the fewest lines; of equals the first.
 *
 * @returns undefined when none is free
 */
export function bestPlace<T>(room: Room, places: readonly T[], boxOf: (place: T) => Box): T | undefined {
  let best: T | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const place of places) {
    const box = boxOf(place);
    if (!room.free(box)) continue;
    const crossed = room.crossed(box);
    if (crossed < least) [best, least] = [place, crossed];
    if (least === 0) break;
  }
  return best;
}

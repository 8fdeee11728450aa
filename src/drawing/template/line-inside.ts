import type { Vec2 } from '../../frame/index.js';
import {
  bounds,
  contains,
  distanceToSegment,
  intersections,
  type Profile,
  segment,
  segments,
} from '../../profile/index.js';
import { COPLANAR } from '../../tolerances.js';
import { from } from './strokes.js';

/**
 * The pieces of a straight line that lie inside every one of some outlines; a piece along an outline counts as inside.
 *
 * @param through a point of the line, mm
 * @param along its unit direction
 * @returns pieces in the direction of the line, mm
 */
export function lineInside(
  outlines: readonly Profile[],
  through: Vec2,
  along: Vec2,
): readonly (readonly [Vec2, Vec2])[] {
  const box = bounds(outlines.flat());
  const reach =
    Math.hypot(box.maxX - box.minX, box.maxY - box.minY) +
    Math.hypot((box.maxX + box.minX) / 2 - through[0], (box.maxY + box.minY) / 2 - through[1]) +
    1;
  const ray = segment(from(through, along, -reach), from(through, along, reach), 0);
  const stops = outlines
    .flatMap((outline) => [
      ...segments(outline).flatMap((piece) => intersections(ray, piece)),
      ...outline.map(({ x, y }): Vec2 => [x, y]).filter((p) => distanceToSegment(ray, p) < COPLANAR),
    ])
    .map((p) => (p[0] - through[0]) * along[0] + (p[1] - through[1]) * along[1])
    .sort((a, b) => a - b);
  const kept: [number, number][] = [];
  stops.forEach((start, i) => {
    const end = stops[i + 1];
    if (end === undefined || end - start < COPLANAR) return;
    if (!outlines.every((outline) => touches(outline, through, along, (start + end) / 2))) return;
    const last = kept.at(-1);
    if (last !== undefined && start - last[1] < COPLANAR) last[1] = end;
    else kept.push([start, end]);
  });
  return kept.map(([start, end]) => [from(through, along, start), from(through, along, end)] as const);
}

/** Whether a point of the line is inside an outline, or beside it by no more than two faces in one plane may differ. */
const touches = (outline: Profile, through: Vec2, along: Vec2, at: number): boolean =>
  [0, COPLANAR, -COPLANAR].some((aside) => contains(outline, from(through, along, at, aside)) !== 'outside');

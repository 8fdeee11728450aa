import type { Vec2 } from '../frame/index.js';
import { SAGITTA, SAME_POINT } from '../tolerances.js';
import { loopArea } from './area.js';
import { type Bounds, boundsOf } from './bounds.js';
import type { Profile } from './profile.js';
import { tessellate } from './tessellate.js';
import { counterClockwise } from './turn.js';

/** A flat area bounded by polygons, mm: outer loops counter-clockwise, holes clockwise; it may have several pieces, or none. */
export type Region = readonly (readonly Vec2[])[];

/** The area inside an outline, arcs as facets; the outline's own direction does not matter. */
export const regionOf = (profile: Profile, sagitta: number = SAGITTA): Region => [
  tessellate(counterClockwise(profile), sagitta),
];

/** Area of a region, holes taken off, mm². */
export const regionArea = (region: Region): number => region.reduce((sum, loop) => sum + loopArea(loop), 0);

/** The box around a region, mm; of an empty one, from +Infinity to -Infinity. */
export const regionBounds = (region: Region): Bounds => boundsOf(region.flat());

/**
 * A region's connected pieces, each one outer loop with the holes in it.
 *
 * @example pieces(subtractRegion(regionOf(board), regionOf(slotAcross))).length // 2
 */
export function pieces(region: Region): readonly Region[] {
  const outers = region.filter((loop) => loopArea(loop) > 0);
  const holes = region.filter((loop) => loopArea(loop) < 0);
  const smallestFirst = outers.toSorted((a, b) => loopArea(a) - loopArea(b));
  const owner = new Map(holes.map((hole) => [hole, smallestFirst.find((outer) => encloses(outer, hole))]));
  return outers.map((outer) => [outer, ...holes.filter((hole) => owner.get(hole) === outer)]);
}

/** Whether a loop lies in another that it may touch but not cross: decided by its corners and side middles that are not on the other. */
function encloses(outer: readonly Vec2[], loop: readonly Vec2[]): boolean {
  for (let i = 0; i < loop.length; i++) {
    const [a, b] = [loop[i]!, loop[(i + 1) % loop.length]!];
    for (const point of [a, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const]) {
      const place = placeIn(outer, point);
      if (place !== 'on') return place === 'inside';
    }
  }
  return false;
}

function placeIn(loop: readonly Vec2[], [x, y]: Vec2): 'inside' | 'outside' | 'on' {
  let inside = false;
  for (let i = 0; i < loop.length; i++) {
    const [[ax, ay], [bx, by]] = [loop[i]!, loop[(i + 1) % loop.length]!];
    const size = Math.hypot(bx - ax, by - ay);
    const across = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / size;
    const along = ((bx - ax) * (x - ax) + (by - ay) * (y - ay)) / size;
    if (Math.abs(across) <= SAME_POINT && along >= -SAME_POINT && along <= size + SAME_POINT) return 'on';
    if (ay <= y !== by <= y && across > 0 === by > ay) inside = !inside;
  }
  return inside ? 'inside' : 'outside';
}

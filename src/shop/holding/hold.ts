import type { Vec2 } from '../../frame/index.js';
import { intersectRegion, type Region } from '../../profile/index.js';

/** How far what a plate rests on reaches beyond the cutter's centre, in the mortise's frame; below 0 when it does not reach it. mm */
export interface Hold {
  readonly start: number;
  readonly end: number;
  readonly near: number;
  readonly far: number;
}

/** How far a stretched band round the wood reaches from a point in each direction of the frame. */
export function holdAt(wood: Region, plate: readonly Vec2[], centre: Vec2): Hold {
  const points = intersectRegion(wood, [plate.map(([x, y]): Vec2 => [x + centre[0], y + centre[1]])])
    .flat()
    .map(([x, y]): Vec2 => [x - centre[0], y - centre[1]]);
  const [start, end] = reachAlong(points);
  const [near, far] = reachAlong(points.map(([x, y]): Vec2 => [y, x]));
  return { start: -start, end, near: -near, far };
}

/** The least hold of a plate at both ends of a travel along x. */
export function holdOver(wood: Region, plate: readonly Vec2[], travel: number): Hold {
  const [a, b] = [holdAt(wood, plate, [-travel, 0]), holdAt(wood, plate, [travel, 0])];
  return {
    start: Math.min(a.start, b.start),
    end: Math.min(a.end, b.end),
    near: Math.min(a.near, b.near),
    far: Math.min(a.far, b.far),
  };
}

/** Where the convex hull of points crosses the x axis; reversed and without end when it does not. */
function reachAlong(points: readonly Vec2[]): readonly [from: number, to: number] {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const meet = (x: number) => {
    from = Math.min(from, x);
    to = Math.max(to, x);
  };
  for (const [ax, ay] of points) {
    if (ay === 0) meet(ax);
    if (ay <= 0) continue;
    for (const [bx, by] of points) if (by < 0) meet(ax + ((bx - ax) * ay) / (ay - by));
  }
  return [from, to];
}

import type { Vec2 } from '../frame/index.js';
import { loopArea } from './area.js';
import type { Bounds } from './bounds.js';
import type { Region } from './region.js';

/** The area of a region that lies in a box, mm²: every loop cut off at the box's sides, where what runs along one and back adds nothing. */
export function areaInBox(region: Region, { minX, maxX, minY, maxY }: Bounds): number {
  const inBox = (loop: readonly Vec2[]) =>
    cutOff(cutOff(cutOff(cutOff(loop, 0, minX, 1), 0, maxX, -1), 1, minY, 1), 1, maxY, -1);
  return region.reduce((sum, loop) => sum + loopArea(inBox(loop)), 0);
}

/** What of a loop lies beyond a line across an axis, on the side of `sense`. */
function cutOff(loop: readonly Vec2[], axis: 0 | 1, at: number, sense: 1 | -1): readonly Vec2[] {
  const left: Vec2[] = [];
  loop.forEach((from, i) => {
    const to = loop[(i + 1) % loop.length]!;
    const [a, b] = [sense * (from[axis] - at), sense * (to[axis] - at)];
    if (a >= 0) left.push(from);
    if (a * b >= 0) return;
    const share = a / (a - b);
    left.push([from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]);
  });
  return left;
}

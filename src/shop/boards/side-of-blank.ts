import type { Board } from '../../board/index.js';
import type { Vec3 } from '../../frame/index.js';
import { COPLANAR } from '../../tolerances.js';

/** The side of the blank that all points lie on; undefined when there is none. Board frame, mm. */
export function sideOfBlank(
  { blank: { width, thickness } }: Board,
  points: readonly Vec3[],
): string | undefined {
  const on = (axis: 1 | 2, at: number) => points.every((point) => Math.abs(point[axis] - at) < COPLANAR);
  if (on(2, 0)) return 'reference face';
  if (on(2, thickness)) return 'opposite face';
  if (on(1, 0)) return 'reference edge';
  return on(1, width) ? 'opposite edge' : undefined;
}

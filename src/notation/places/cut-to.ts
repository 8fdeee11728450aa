import { faces } from '../../board/index.js';
import {
  add,
  directionOut,
  dot,
  type Plane,
  pointIn,
  pointOut,
  scale,
  subtract,
  type Vec3,
} from '../../frame/index.js';
import { contains, type Region } from '../../profile/index.js';
import { SAME_POINT } from '../../tolerances.js';
import type { Stood } from './stood.js';

/**
 * The flat face a straight line first meets on its way to some boards, assembly frame.
 *
 * @param from mm
 * @param way any length
 * @returns undefined where it meets no flat face of theirs
 */
export function faceMet(boards: readonly Stood[], from: Vec3, way: Vec3): Plane | undefined {
  let nearest = Number.POSITIVE_INFINITY;
  let found: Plane | undefined;
  for (const { placed } of boards) {
    for (const { frame, region } of faces(placed.board)) {
      const plane = {
        point: pointOut(placed.place, frame.origin),
        normal: directionOut(placed.place, frame.z),
      };
      const facing = dot(plane.normal, way);
      if (facing > -SAME_POINT) continue;
      const run = dot(plane.normal, subtract(plane.point, from)) / facing;
      if (run < -SAME_POINT || run >= nearest - SAME_POINT) continue;
      const [x, y] = pointIn(frame, pointIn(placed.place, add(from, scale(way, run))));
      if (!inside(region, x, y)) continue;
      nearest = run;
      found = plane;
    }
  }
  return found;
}

const inside = (region: Region, x: number, y: number): boolean =>
  region.filter(
    (loop) =>
      contains(
        loop.map(([u, v]) => ({ x: u, y: v, bulge: 0 })),
        [x, y],
      ) !== 'outside',
  ).length %
    2 ===
  1;

/** Where a line meets a plane: how many times `way` from a point. */
export const runTo = ({ point, normal }: Plane, from: Vec3, way: Vec3): number =>
  dot(normal, subtract(point, from)) / dot(normal, way);

/** The four long arrises of a board as offsets from its middle line. */
export const arrises = (a: Vec3, sizeA: number, b: Vec3, sizeB: number): readonly Vec3[] =>
  [-1, 1].flatMap((i) => [-1, 1].map((j) => add(scale(a, (i * sizeA) / 2), scale(b, (j * sizeB) / 2))));

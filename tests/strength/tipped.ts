import type { Vec3 } from '../../src/frame/index.js';
import { doubleMesh, type Solids, section } from '../../src/solid/index.js';
import { density } from '../../src/tables/index.js';

/** A piece as a rigid thing on the floor: every corner of its solids, its weight and its middle. */
export interface Rigid {
  readonly corners: readonly Vec3[];
  /** N */
  readonly weight: number;
  readonly middle: Vec3;
}

/**
 * Weight and middle from level slices of the kernel, corners from the bodies where they stand: neither hull nor foot line nor a
 * sum over tetrahedra is used.
 */
export function rigidOf({ boards, tenons }: Solids, slices = 100): Rigid {
  const pieces = [
    ...[...boards.values()].map(({ body, board }) => ({ body, wood: density(board.material) })),
    ...[...tenons.values()].map(({ body, joint }) => ({
      body,
      wood: density(boards.get(joint.a)!.board.material),
    })),
  ];
  let [mass, mx, my, mz] = [0, 0, 0, 0];
  for (const { body, wood } of pieces) {
    const { min, max } = body.boundingBox();
    const thick = (max[2] - min[2]) / slices;
    for (let i = 0; i < slices; i += 1) {
      const z = min[2] + (i + 0.5) * thick;
      const level = section(body, { origin: [0, 0, z], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] });
      for (const loop of level)
        loop.forEach(([x0, y0], k) => {
          const [x1, y1] = loop[(k + 1) % loop.length]!;
          const turn = (x0 * y1 - x1 * y0) * thick * wood * 1e-9;
          mass += turn / 2;
          mz += (turn / 2) * z;
          mx += (turn * (x0 + x1)) / 6;
          my += (turn * (y0 + y1)) / 6;
        });
    }
  }
  const corners = pieces.flatMap(({ body }) => {
    const { corners: all } = doubleMesh(body);
    return Array.from(
      { length: all.length / 3 },
      (_, i): Vec3 => [all[3 * i]!, all[3 * i + 1]!, all[3 * i + 2]!],
    );
  });
  return { corners, weight: mass * 9.81, middle: [mx / mass, my / mass, mz / mass] };
}

/** How far the piece is rolled over to see whether it falls, radians. */
const ROLL = 1e-6;

/**
 * The smallest push towards some directions that makes the piece fall, a load standing on it: for every direction it is rolled a
 * little about whatever corner is lowest then, and the push is what makes up for the rise of its weight and the load.
 *
 * @param towards degrees from the right, counter-clockwise from above, at the middle of the directions that are tried
 * @returns N; negative when it falls by itself
 */
export function pushThatTips(
  { corners, weight, middle }: Rigid,
  load: { readonly force: number; readonly at: Vec3 },
  towards: number,
  spread = 5,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (let deg = towards - spread; deg <= towards + spread; deg += 0.25) {
    const [dx, dy] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
    // rolled by a small angle, a point that lies further that way sinks by its distance, and moves that way by its height
    const sinks = ([x, y, z]: Vec3) => z - ROLL * (x * dx + y * dy) - (ROLL ** 2 / 2) * z;
    let pivot = corners[0]!;
    for (const corner of corners) if (sinks(corner) < sinks(pivot)) pivot = corner;
    const rises = (point: Vec3) => sinks(point) - sinks(pivot) - (point[2] - pivot[2]);
    const work = weight * rises(middle) + load.force * rises(load.at);
    const moves = ROLL * (load.at[2] - pivot[2]);
    least = Math.min(least, work / moves);
  }
  return least;
}

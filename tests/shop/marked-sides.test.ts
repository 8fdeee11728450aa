// Where the marked faces of a board look, against its solid as it stands in the piece.

import { afterAll, beforeAll, expect, test } from 'vitest';
import { dot, subtract, type Vec3 } from '../../src/frame/index.js';
import { markedSides } from '../../src/shop/index.js';
import { type Kernel, meshOf, solidsOf, startKernel } from '../../src/solid/index.js';
import { made } from './made.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const mean = (points: readonly Vec3[]): Vec3 =>
  [0, 1, 2].map((i) => points.reduce((sum, point) => sum + point[i]!, 0) / points.length) as unknown as Vec3;

/** From the middle of the solid to what of it lies farthest against a direction. */
function towards(points: readonly Vec3[], direction: Vec3): readonly [middle: Vec3, face: Vec3] {
  const along = points.map((point) => dot(point, direction));
  const least = Math.min(...along);
  return [mean(points), mean(points.filter((_, i) => along[i]! < least + 0.5))];
}

test.each([
  ['stool', {}],
  ['stool', { treads: 2 }],
  ['frame', {}],
] as const)('the marked faces of a %s look where their words say (%o)', (model, values) => {
  const design = made(model, values);
  const solids = solidsOf(kernel, design);
  const bodies = new Map(
    design.boards.map(({ board }) => {
      const { positions } = meshOf(solids.boards.get(board.id)!.body);
      const points = Array.from(
        { length: positions.length / 3 },
        (_, i): Vec3 => [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!],
      );
      return [board.id, points] as const;
    }),
  );
  const centre = mean([...bodies.values()].map(mean));
  let looked = 0;
  for (const { board, place } of design.boards)
    for (const [mark, axis] of [
      ['face', place.z],
      ['edge', place.y],
      ['end', place.x],
    ] as const) {
      const side = new RegExp(`\\b${mark}: (\\w+)`).exec(markedSides(design, [board.id]))?.[1];
      if (side === undefined) continue;
      looked += 1;
      const [middle, face] = towards(bodies.get(board.id)!, axis);
      const [dx, dy, dz] = subtract(face, middle);
      const out = dot(subtract(middle, centre), subtract(face, middle));
      const is: Readonly<Record<string, boolean>> = {
        underside: dz < 0,
        upper: dz > 0,
        left: dx < 0,
        right: dx > 0,
        front: dy < 0,
        back: dy > 0,
        outside: out > 0,
        inside: out < 0,
      };
      expect(is[side], `${board.id}, ${mark}: ${side}`).toBe(true);
    }
  expect(looked).toBeGreaterThanOrEqual(2 * design.boards.length);
});

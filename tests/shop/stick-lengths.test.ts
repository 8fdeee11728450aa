// How long a story stick is, against the finished solid of the board it is laid on.

import { afterAll, beforeAll, expect, test } from 'vitest';
import { dot, type Frame, length, type Vec3 } from '../../src/frame/index.js';
import { storySticks } from '../../src/shop/index.js';
import { type Kernel, meshOf, solidsOf, startKernel } from '../../src/solid/index.js';
import { carded, made } from './made.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const AXES = {
  'along the grain': ({ x }: Frame) => x,
  'across the grain': ({ y }: Frame) => y,
  'through the thickness': ({ z }: Frame) => z,
} as const;

const extent = (points: readonly Vec3[], axis: Vec3): number => {
  const along = points.map((point) => dot(point, axis));
  return Math.max(...along) - Math.min(...along);
};

test.each([
  ['stool', {}],
  ['stool', { treads: 2, rake: 17 }],
  ['frame', {}],
] as const)('story sticks of a %s are as long as the wood they are laid on (%o)', (model, values) => {
  const { design, cards } = carded(made(model, values));
  const solids = solidsOf(kernel, design);
  let square = 0;
  for (const { boards, direction, length: told, marks } of storySticks(design, cards))
    for (const { id } of boards) {
      const { place } = design.boards.find(({ board }) => board.id === id)!;
      const { positions } = meshOf(solids.boards.get(id)!.body);
      const points = Array.from(
        { length: positions.length / 3 },
        (_, i): Vec3 => [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!],
      );
      const where = `${id}, ${direction}`;
      if (direction === 'along the centre line') {
        // a slanted line on the board is never longer than from one of its corners to the one farthest away
        expect(told, where).toBeLessThan(
          length([place.x, place.y, place.z].map((axis) => extent(points, axis)) as unknown as Vec3),
        );
      } else {
        square += 1;
        expect(told, where).toBeCloseTo(extent(points, AXES[direction](place)), 2);
      }
      for (const { at } of marks) expect(at >= -1e-6 && at <= told + 1e-6, `${where}: ${at}`).toBe(true);
    }
  expect(square).toBeGreaterThan(2);
});

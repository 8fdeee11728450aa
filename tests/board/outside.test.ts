import { expect, test } from 'vitest';
import { boardOutside } from '../../src/board/index.js';
import { dot, unit, type Vec3 } from '../../src/frame/index.js';
import { doubleMesh, solidsOf, startKernel } from '../../src/solid/index.js';
import { sampledDesigns } from '../properties/sampled-designs.js';
import { many, SEED } from '../properties/seed.js';

/** Ways to look from, all round. */
const WAYS = [-1, -0.4, 0, 0.7, 1].flatMap((x) =>
  [-1, -0.3, 0, 0.6, 1].flatMap((y) =>
    [-1, -0.5, 0, 0.8, 1].flatMap((z): Vec3[] => (x || y || z ? [unit([x, y, z])] : [])),
  ),
);

test(`for all boards the corners told by the data reach as far every way as those of the solid stock (seed ${SEED})`, async () => {
  let sawn = 0;
  for (const { name, design } of sampledDesigns(many(6, 60), SEED)) {
    if (!design) continue;
    const kernel = await startKernel();
    for (const { board, stock } of solidsOf(kernel, design).boards.values()) {
      if (board.bevels.some(({ within }) => within)) continue;
      sawn += board.bevels.length;
      const { corners: all } = doubleMesh(stock);
      const solid = Array.from(
        { length: all.length / 3 },
        (_, i): Vec3 => [all[3 * i]!, all[3 * i + 1]!, all[3 * i + 2]!],
      );
      const reach = (corners: readonly Vec3[], way: Vec3) =>
        Math.max(...corners.map((corner) => dot(corner, way)));
      const { corners } = boardOutside(board);
      for (const way of WAYS)
        expect(reach(corners, way), `${name}: ${board.id}`).toBeCloseTo(reach(solid, way), 5);
    }
    kernel.dispose();
  }
  expect(sawn).toBeGreaterThan(0);
});

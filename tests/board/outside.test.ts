import { expect, test } from 'vitest';
import { type Board, boardOutside, makeBoard } from '../../src/board/index.js';
import { dot, unit, type Vec3 } from '../../src/frame/index.js';
import { type Body, doubleMesh, solidsOf, startKernel, stockBody } from '../../src/solid/index.js';
import { sampledDesigns } from '../properties/sampled-designs.js';
import { many, SEED } from '../properties/seed.js';

/** Ways to look from, all round. */
const WAYS = [-1, -0.4, 0, 0.7, 1].flatMap((x) =>
  [-1, -0.3, 0, 0.6, 1].flatMap((y) =>
    [-1, -0.5, 0, 0.8, 1].flatMap((z): Vec3[] => (x || y || z ? [unit([x, y, z])] : [])),
  ),
);

const reach = (corners: readonly Vec3[], way: Vec3) => Math.max(...corners.map((corner) => dot(corner, way)));

/** The corners of the data and those of the solid reach as far every way. */
function reachesAsFar(board: Board, stock: Body, name: string): void {
  const { corners: all } = doubleMesh(stock);
  const solid = Array.from(
    { length: all.length / 3 },
    (_, i): Vec3 => [all[3 * i]!, all[3 * i + 1]!, all[3 * i + 2]!],
  );
  const { corners } = boardOutside(board);
  for (const way of WAYS) expect(reach(corners, way), name).toBeCloseTo(reach(solid, way), 5);
}

test(`for all boards the corners told by the data reach as far every way as those of the solid stock (seed ${SEED})`, async () => {
  const kernel = await startKernel();
  for (const { name, design } of sampledDesigns(many(6, 60), SEED)) {
    for (const { board, stock } of design ? solidsOf(kernel, design).boards.values() : [])
      if (!board.bevels.some(({ within }) => within)) reachesAsFar(board, stock, `${name}: ${board.id}`);
  }
  kernel.dispose();
});

test('a bevel that leaves half of an edge standing leaves its corners there', async () => {
  const board = makeBoard({
    id: 'board',
    blank: { length: 300, width: 120, thickness: 24 },
    bevels: [
      { id: 'edge', point: [0, 120, 12], normal: unit([0, 1, 1]) },
      { id: 'end', point: [300, 0, 6], normal: unit([1, 0, -2]) },
    ],
  });
  const kernel = await startKernel();
  reachesAsFar(board, kernel.keep(stockBody(kernel, board)), 'bevelled');
  expect(reach(boardOutside(board).corners, [0, 1, 0])).toBeCloseTo(120, 9);
  kernel.dispose();
});

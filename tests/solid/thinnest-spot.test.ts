import { afterAll, expect, test } from 'vitest';
import stool from '../../models/stool.js';
import { length, subtract } from '../../src/frame/index.js';
import { readParameters } from '../../src/model/index.js';
import { hit, measureJoints, solidsOf, startKernel, thinnestSpot } from '../../src/solid/index.js';

const kernel = await startKernel();
afterAll(() => kernel.dispose());

const solids = solidsOf(
  kernel,
  stool.build(readParameters(stool, { cutter: '14', stretcherThickness: '16' }, 'mm')),
);

test('for every mortise the thinnest spot is as thin as its wall was measured, with wood all the way', () => {
  const all = measureJoints(solids).flatMap(({ mortises }) => mortises);
  expect(all).toHaveLength(12);
  for (const mortise of all) {
    const board = solids.boards.get(mortise.board)!;
    const spots = thinnestSpot(board, mortise)!;
    const { from, to } = spots;
    const way = subtract(to, from);
    expect(length(way)).toBeCloseTo(mortise.wall, 4);
    // from the air of the mortise the first surface is its wall, from the air outside the other face: the kernel tells
    const at = (share: number) => from.map((part, i) => part + share * way[i]!) as unknown as typeof from;
    const inBody = hit(board.body, at(-0.05), at(1.05));
    expect(inBody).toBeCloseTo(0.05 * length(way), 3);
    const back = hit(board.body, at(1.05), at(-0.05));
    expect(back).toBeCloseTo(0.05 * length(way), 3);
    expect(hit(board.body, at(0.02), at(0.98))).toBeUndefined();
  }
});

test('a spot between faces side by side is in the middle of them, not at an end', () => {
  const stretcher = solids.boards.get('stretcher')!;
  const measures = measureJoints(solids).flatMap(({ mortises }) => mortises);
  const mortise = measures.find(({ board }) => board === 'stretcher')!;
  const { from } = thinnestSpot(stretcher, mortise)!;
  const inBoard = subtract(from, stretcher.place.origin);
  const along = (axis: 'x' | 'y' | 'z') =>
    inBoard.reduce((sum, part, i) => sum + part * stretcher.place[axis][i]!, 0);
  // the mortise is as high as the stretcher's edge allows, centred on its width of 70
  expect(Math.abs(along('y') - 35)).toBeLessThan(mortise.length / 3);
});

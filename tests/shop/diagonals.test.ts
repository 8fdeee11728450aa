import { afterAll, beforeAll, expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import stoolModel from '../../models/stool.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { cheekArea, diagonalsOf, glueMass, glueUp } from '../../src/shop/index.js';
import { type Kernel, meshOf, solidsOf, startKernel } from '../../src/solid/index.js';
import { builtPiece, shippedPiece } from '../notation/built-piece.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const built = (model: Model, raw: Readonly<Record<string, string | number>> = {}) =>
  model.build(readParameters(model, raw, 'mm'));

test('a frame is square when the diagonals of its opening are those of its sizes', () => {
  const design = built(frameModel);
  const [opening, ...more] = diagonalsOf(design, glueUp(design));
  expect(more).toEqual([]);
  // the long rails are 600 long, and 400 less two rails of 70 apart
  const expected = Math.hypot(600, 400 - 2 * 70);
  for (const { length } of opening!.pairs) expect(length).toBeCloseTo(expected, 9);
  expect(opening!.pairs[0].from.words).toContain('left corner of its opposite edge');
  expect(opening!.pairs[0].to.words).toContain('right corner of its reference edge');
});

test.each([{}, { treads: 2 }])(
  'the corners of a stool stand on its solids, and both diagonals are equal',
  (raw) => {
    const design = built(stoolModel, raw);
    const solids = solidsOf(kernel, design);
    const found = diagonalsOf(design, glueUp(design));
    expect(found).toHaveLength(2);
    for (const { pairs } of found) {
      expect(pairs[0].length).toBeCloseTo(pairs[1].length, 6);
      for (const { board, at } of pairs.flatMap(({ from, to }) => [from, to])) {
        const { positions } = meshOf(solids.boards.get(board)!.body);
        const nearest = Math.min(
          ...Array.from({ length: positions.length / 3 }, (_, i) =>
            Math.hypot(...at.map((part, k) => part - positions[3 * i + k]!)),
          ),
        );
        // the mesh is single precision
        expect(nearest).toBeLessThan(0.001);
      }
    }
    // the sides are mirror images: at one height both ways across the feet are told in words
    expect(found[1]!.pairs[0].from.words).toBe('left side, bottom front corner of its opposite face');
    expect(found[1]!.pairs[0].to.words).toBe('right side, bottom back corner of its opposite face');
  },
);

test('a corner of a post that leans is told by two different ways, as high and in front', () => {
  const design = builtPiece(shippedPiece('garden-chair'));
  const corners = diagonalsOf(design, glueUp(design)).flatMap(({ pairs }) =>
    pairs.flatMap(({ from, to }) => [from, to]),
  );
  expect(corners.length).toBeGreaterThan(4);
  for (const { words } of corners) {
    const [, one, other] = /, (\w+) (\w+) corner/.exec(words)!;
    expect(axisOf(one!), words).not.toBe(axisOf(other!));
  }
});

const axisOf = (word: string): number =>
  [
    ['left', 'right'],
    ['front', 'back'],
    ['bottom', 'top'],
  ].findIndex((pair) => pair.includes(word));

test('the mass of glue is the flat cheeks in both boards at 150 g/m², between 120 and 200', () => {
  const design = built(frameModel);
  const { tenons } = design.joints[0]!;
  const [tenon] = tenons;
  expect(cheekArea(tenon!)).toBeCloseTo(2 * (tenon!.width - tenon!.thickness) * tenon!.length, 9);
  const mass = glueMass(design);
  expect(mass.areaMm2).toBeCloseTo(4 * cheekArea(tenon!), 6);
  // a square metre takes 150 g
  expect(mass.grams).toBeCloseTo(mass.areaMm2 * 150e-6, 9);
  expect(mass.leastGrams / mass.grams).toBeCloseTo(0.8, 9);
  expect(mass.mostGrams / mass.grams).toBeCloseTo(4 / 3, 9);
});

test('where two boards are glued into one, glue goes on the whole seam, its mortises left out, and on the edge joints of blanks', () => {
  const design = built(stoolModel, { treads: 2, overhang: 30, setback: 10, taper: 3 });
  const solids = solidsOf(kernel, design);
  const mass = glueMass(design, 30000);
  expect(mass.seams).toEqual(['left-step/left-side', 'right-step/right-side']);
  // half the two boards' surface that vanishes when they are put together, on finished solids: mouths never count
  const seam = (['left', 'right'] as const).map((hand) => {
    const [step, side] = [`${hand}-step`, `${hand}-side`].map((id) => solids.boards.get(id)!.body);
    const both = step!.add(side!);
    const shared = (step!.surfaceArea() + side!.surfaceArea() - both.surfaceArea()) / 2;
    both.delete();
    return shared;
  });
  expect(mass.seamMm2).toBeCloseTo(seam[0]! + seam[1]!, -1);
  expect(mass.grams).toBeCloseTo((mass.areaMm2 + mass.seamMm2 + 30000) * 150e-6, 9);
  expect(glueMass(built(stoolModel)).seams).toEqual([]);
});

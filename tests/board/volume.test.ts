import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Bevel, type Board, makeBoard, stockVolume } from '../../src/board/index.js';
import { unit, type Vec3 } from '../../src/frame/index.js';
import { circle, obround, polygon, rectangle } from '../../src/profile/index.js';
import { type Kernel, startKernel, stockBody } from '../../src/solid/index.js';
import { seed } from '../properties/seed.js';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const blank = { length: 300, width: 120, thickness: 24 };
const volumeOf = (bevels: readonly Bevel[], size = blank): number =>
  stockVolume(makeBoard({ id: 'board', blank: size, bevels })).volume;

test('a plain board holds length × width × thickness, less its openings', () => {
  expect(volumeOf([])).toBeCloseTo(300 * 120 * 24, 6);
  const open = makeBoard({
    id: 'open',
    blank,
    openings: [{ id: 'hand', outline: obround({ length: 100, width: 30, centre: [150, 60] }) }],
  });
  // obround: π d²/4 + d (L − d)
  expect(stockVolume(open).volume).toBeCloseTo((300 * 120 - ((Math.PI * 900) / 4 + 30 * 70)) * 24, 6);
});

test.each([1e-6, 1e-3, 1, 10, 25])(
  'a board raked by %f°, both ends bevelled parallel, holds its middle length × width × thickness',
  (degrees) => {
    const rho = rad(degrees);
    const level: Vec3 = [Math.cos(rho), 0, -Math.sin(rho)];
    const volume = volumeOf([
      { id: 'foot', point: [0, 0, 0], normal: [-level[0], 0, -level[2]] },
      { id: 'top', point: [300, 0, 24], normal: level },
    ]);
    // a parallelepiped: half a bevel run is lost at each end
    const middle = 300 - 24 * Math.tan(rho);
    expect(volume / (middle * 120 * 24)).toBeCloseTo(1, 7);
  },
);

test('a board bevelled to a point at its end holds the prism of its triangle', () => {
  // two 45° cuts, square to the faces, from the middle of the end
  const half = Math.SQRT1_2;
  const volume = volumeOf([
    { id: 'left', point: [300, 60, 0], normal: [half, -half, 0] },
    { id: 'right', point: [300, 60, 0], normal: [half, half, 0] },
  ]);
  expect(volume).toBeCloseTo((300 * 120 - 60 * 60) * 24, 3);
});

test('a board with a pyramid cut at a corner loses a sixth of the box of its three legs', () => {
  // the plane through (30, 0, 0), (0, 40, 0) and (0, 0, 20): its normal is (1/30, 1/40, 1/20)
  const normal = unit([-1 / 30, -1 / 40, -1 / 20]);
  expect(volumeOf([{ id: 'corner', point: [30, 0, 0], normal }])).toBeCloseTo(
    300 * 120 * 24 - (30 * 40 * 20) / 6,
    3,
  );
});

test('two bevels whose ridge runs out of the end at a third of the thickness are found slice by slice', () => {
  // x − 300 + |y − 60| ≤ z − 8: the ridge falls into the wood below z = 8 and has left it above
  const bevels = [-1, 1].map(
    (side): Bevel => ({
      id: `bevel${side}`,
      point: [300, 60, 8],
      normal: unit([1, side, -1]),
    }),
  );
  let expected = 300 * 120 * 24;
  const slices = 4000;
  for (let i = 0; i < slices; i += 1) {
    const tip = ((i + 0.5) / slices) * 24 - 8;
    // lost to each half of the width: a trapezium below the ridge, a triangle above it
    const lost = tip <= 0 ? (-tip + 30) * 60 : (60 - tip) ** 2 / 2;
    expected -= 2 * lost * (24 / slices);
  }
  expect(volumeOf(bevels)).toBeCloseTo(expected, 1);
});

const boards = fc
  .record({
    length: fc.double({ min: 80, max: 900, noNaN: true }),
    width: fc.double({ min: 40, max: 300, noNaN: true }),
    thickness: fc.double({ min: 10, max: 50, noNaN: true }),
    taper: fc.double({ min: 0, max: 0.2, noNaN: true }),
    radius: fc.constantFrom(0, 5, 12),
    hole: fc.boolean(),
    bevels: fc.array(
      fc.record({
        // anywhere in the outer parts of the board, leaning any way by at most 60°
        at: fc.tuple(
          fc.double({ min: 0.7, max: 1, noNaN: true }),
          fc.double({ min: 0, max: 1, noNaN: true }),
          fc.double({ min: 0, max: 1, noNaN: true }),
        ),
        turn: fc.double({ min: -0.9, max: 0.9, noNaN: true }),
        lean: fc.double({ min: -1, max: 1, noNaN: true }),
        foot: fc.boolean(),
        strip: fc.boolean(),
      }),
      { maxLength: 3 },
    ),
  })
  .map(({ length, width, thickness, taper, radius, hole, bevels }): Board => {
    const narrow = width * (0.5 - taper);
    return makeBoard({
      id: 'any',
      blank: { length, width, thickness },
      outline: polygon([
        { x: 0, y: 0, radius },
        { x: length, y: width / 2 - narrow },
        { x: length, y: width / 2 + narrow, radius },
        { x: 0, y: width },
      ]),
      openings: hole
        ? [{ id: 'hole', outline: circle({ diameter: width / 5, centre: [length / 2, width / 2] }) }]
        : [],
      bevels: bevels.map(({ at, turn, lean, foot, strip }, i): Bevel => {
        const side = foot ? -1 : 1;
        const x = foot ? length * (1 - at[0]) : length * at[0];
        const normal = unit([side * Math.cos(turn), Math.sin(turn), Math.tan(lean)]);
        const point: Vec3 = [x, at[1] * width, at[2] * thickness];
        const within = rectangle({ x: x - 60, y: width * 0.3, length: 120, width: width * 0.5 });
        return { id: `bevel-${i}`, point, normal, ...(strip ? { within } : {}) };
      }),
    });
  });

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

test('for all boards with up to three bevels any way the volume from data is that of the solid', () => {
  fc.assert(
    fc.property(boards, (board) => {
      const { volume, allowance } = stockVolume(board);
      const body = stockBody(kernel, board);
      const found = body.volume();
      body.delete();
      expect(Math.abs(found - volume)).toBeLessThanOrEqual(allowance + 1e-3);
    }),
    seed(250),
  );
});

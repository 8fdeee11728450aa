import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { obround, regionOf } from '../../src/profile/index.js';
import { meshOf, prism, startKernel } from '../../src/solid/index.js';
import type { Point } from '../../src/viewer/index.js';
import { sliceLoops } from '../../src/viewer/piece/slice.js';

const kernel = await startKernel();
afterAll(() => kernel.dispose());

/** Area of loops in a level plane: what is round wood counts, what is round air is taken away. */
const areaOf = (loops: readonly (readonly Point[])[]): number =>
  loops.reduce(
    (sum, loop) =>
      sum +
      loop.reduce((part, [x, y], i) => {
        const [nx, ny] = loop[(i + 1) % loop.length]!;
        return part + (x * ny - nx * y) / 2;
      }, 0),
    0,
  );

/** A plate of 280 × 80 × 20 with round ends, and in its upper face a mortise of 40 × 10, 12 deep. */
const board = (() => {
  const wood = kernel.keep(prism(kernel, regionOf(obround({ length: 280, width: 80 })), 0, 20, undefined));
  const air = kernel.keep(prism(kernel, regionOf(obround({ length: 40, width: 10 })), 8, 21, undefined));
  return kernel.keep(wood.subtract(air));
})();

const { positions, triangles } = meshOf(board);
const level = (at: number) => sliceLoops(Float32Array.from(positions), triangles, [0, 0, 1], at);

test('above the bottom of a mortise a section is the board less the mortise, below it the whole board', () => {
  // an obround of length l and width w is w·(l − w) + π·w²/4
  const obroundArea = (l: number, w: number) => w * (l - w) + (Math.PI * w * w) / 4;
  const [wood, air] = [obroundArea(280, 80), obroundArea(40, 10)];
  expect(level(15)).toHaveLength(2);
  expect(Math.abs(areaOf(level(15)) - (wood - air))).toBeLessThan(0.002 * wood);
  expect(level(4)).toHaveLength(1);
  expect(Math.abs(areaOf(level(4)) - wood)).toBeLessThan(0.002 * wood);
  // the mortise alone: the difference of the two
  expect(Math.abs(areaOf(level(4)) - areaOf(level(15)) - air)).toBeLessThan(0.01 * air);
});

test('a plane beside the solid cuts nothing, and one in its face or its bottom tears no loop', () => {
  expect(level(25)).toEqual([]);
  expect(level(-1)).toEqual([]);
  for (const at of [0, 8, 20]) for (const loop of level(at)) expect(loop.length).toBeGreaterThan(2);
});

test('for any plane the areas of the sections add up to the volume: Cavalieri', () => {
  const steps = 400;
  const low = 20 / steps / 2;
  const sum = Array.from({ length: steps }, (_, i) => areaOf(level(low + (20 * i) / steps))).reduce(
    (a, b) => a + b,
  );
  expect(Math.abs((sum * 20) / steps - board.volume()) / board.volume()).toBeLessThan(0.001);
});

test('for all planes through a board every loop lies in its plane, and in the kernel’s own section of the same size', () => {
  const plane = fc.record({
    turn: fc.double({ min: 0, max: Math.PI, noNaN: true }),
    tilt: fc.double({ min: 0.05, max: 3.09, noNaN: true }),
    at: fc.double({ min: -9, max: 9, noNaN: true }),
  });
  fc.assert(
    fc.property(plane, ({ turn, tilt, at }) => {
      const normal: Point = [
        Math.cos(turn) * Math.sin(tilt),
        Math.sin(turn) * Math.sin(tilt),
        Math.cos(tilt),
      ];
      const loops = sliceLoops(Float32Array.from(positions), triangles, normal, at);
      for (const p of loops.flat()) {
        expect(Math.abs(p[0] * normal[0] + p[1] * normal[1] + p[2] * normal[2] - at)).toBeLessThan(1e-4);
      }
      // the cap closes the part that is kept: its vector area is that of the faces cut away
      const sum = loops.reduce((total, loop) => {
        loop.forEach((a, i) => {
          const b = loop[(i + 1) % loop.length]!;
          const c = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
          total += (c[0]! * normal[0] + c[1]! * normal[1] + c[2]! * normal[2]) / 2;
        });
        return total;
      }, 0);
      const kept = board.trimByPlane([-normal[0], -normal[1], -normal[2]], -at);
      const whole = kept.surfaceArea();
      const other = board.trimByPlane([...normal], at);
      // the surfaces of both halves are the board's and the cut twice
      const cut = (whole + other.surfaceArea() - board.surfaceArea()) / 2;
      kept.delete();
      other.delete();
      expect(Math.abs(sum - cut)).toBeLessThan(0.5 + 1e-3 * cut);
    }),
    { numRuns: 60 },
  );
});

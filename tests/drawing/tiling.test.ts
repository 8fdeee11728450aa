// Sizes of paper: ISO 216 A4 210 × 297 mm, ANSI/ASME Y14.1 A 215.9 × 279.4 mm. What both print inside margins of 10 mm is
// min(190, 195.9) × min(277, 259.4); 14 mm of it are the footer.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Box, OVERLAP, TILE_WINDOW, tilePlan } from '../../src/drawing/index.js';

const box = (width: number, height: number): Box => ({ minX: 0, minY: 0, maxX: width, maxY: height });
const everywhere = { avoid: [], inked: () => true, worded: () => false };
const numbered = ({ tiles }: ReturnType<typeof tilePlan>) =>
  tiles.filter(({ number }) => number !== undefined);

test('the window fits A4 and Letter inside margins of 10 mm, with 14 mm of footer', () => {
  const common = [Math.min(210, 215.9) - 20, Math.min(297, 279.4) - 20] as const;
  expect(TILE_WINDOW.portrait[0]).toBeCloseTo(common[0], 9);
  expect(TILE_WINDOW.portrait[1]).toBeCloseTo(common[1] - 14, 9);
  expect(TILE_WINDOW.landscape[0]).toBeCloseTo(common[1], 9);
  expect(TILE_WINDOW.landscape[1]).toBeCloseTo(common[0] - 14, 9);
});

test('a drawing as large as a window less the overlap takes one sheet, one mm more takes two', () => {
  const [width, height] = TILE_WINDOW.portrait;
  const one = tilePlan({ box: box(width - OVERLAP, height - OVERLAP), ...everywhere });
  expect(numbered(one)).toHaveLength(1);
  expect(one.marks).toEqual([]);
  const two = tilePlan({ box: box(width - OVERLAP, height - OVERLAP + 1), ...everywhere });
  expect(numbered(two)).toHaveLength(2);
});

test('410 × 260 takes four sheets in landscape and would take six in portrait', () => {
  const plan = tilePlan({ box: box(410, 260), ...everywhere });
  expect(plan.orientation).toBe('landscape');
  expect(numbered(plan)).toHaveLength(4);
});

const sizes = fc.record({
  width: fc.double({ min: 20, max: 1200, noNaN: true }),
  height: fc.double({ min: 20, max: 700, noNaN: true }),
});

test('for all sizes the frames fill the drawing without a gap, and every sheet fits its window', () => {
  fc.assert(
    fc.property(sizes, ({ width, height }) => {
      const plan = tilePlan({ box: box(width, height), ...everywhere });
      const area = plan.tiles.reduce(
        (sum, { frame }) => sum + (frame.maxX - frame.minX) * (frame.maxY - frame.minY),
        0,
      );
      expect(area).toBeCloseTo(width * height, 4);
      const [most, high] = TILE_WINDOW[plan.orientation];
      for (const { shown, frame } of plan.tiles) {
        expect(shown.maxX - shown.minX).toBeLessThanOrEqual(most + 1e-6);
        expect(shown.maxY - shown.minY).toBeLessThanOrEqual(high + 1e-6);
        expect(frame.minX - shown.minX).toBeCloseTo(OVERLAP / 2, 9);
      }
    }),
    { numRuns: 200 },
  );
});

test('for all sizes two marks stand on every seam, in both sheets that share it', () => {
  fc.assert(
    fc.property(sizes, ({ width, height }) => {
      const plan = tilePlan({ box: box(width, height), ...everywhere });
      const seams = plan.rows * (plan.columns - 1) + plan.columns * (plan.rows - 1);
      expect(plan.marks).toHaveLength(2 * seams);
      expect(new Set(plan.marks.map(({ name }) => name)).size).toBe(plan.marks.length);
      for (const { at, sheets } of plan.marks) {
        for (const number of sheets) {
          const { shown } = plan.tiles.find((tile) => tile.number === number)!;
          expect(at[0]).toBeGreaterThan(shown.minX);
          expect(at[0]).toBeLessThan(shown.maxX);
          expect(at[1]).toBeGreaterThan(shown.minY);
          expect(at[1]).toBeLessThan(shown.maxY);
        }
      }
    }),
    { numRuns: 200 },
  );
});

test('for all places of a mortise the seam is moved off it by 6 mm and more', () => {
  fc.assert(
    fc.property(fc.double({ min: 20, max: 360, noNaN: true }), (x) => {
      const mortise: Box = { minX: x, maxX: x + 40, minY: 60, maxY: 68 };
      const plan = tilePlan({ box: box(420, 150), ...everywhere, avoid: [mortise] });
      for (const { frame } of plan.tiles) {
        if (frame.maxX === 420) continue;
        expect(frame.maxX <= mortise.minX - 6 || frame.maxX >= mortise.maxX + 6).toBe(true);
      }
    }),
  );
});

test('one sheet more is taken when only that keeps every seam off the mortises', () => {
  const [width] = TILE_WINDOW.landscape;
  const pitch = width - OVERLAP;
  // two sheets would meet somewhere between these, and a mortise fills all of it
  const size = 2 * pitch - 30;
  const mortise: Box = { minX: size - pitch - 5, maxX: pitch + 5, minY: 20, maxY: 28 };
  const plain = tilePlan({ box: box(size, 100), ...everywhere });
  const kept = tilePlan({ box: box(size, 100), ...everywhere, avoid: [mortise] });
  expect(plain.columns).toBe(2);
  expect(kept.columns).toBe(3);
});

test('a sheet with nothing on it is not printed, keeps its place in the map and has no marks', () => {
  const hole: Box = { minX: 240, maxX: 500, minY: 160, maxY: 330 };
  const outside = (a: Box) =>
    !(a.minX >= hole.minX && a.maxX <= hole.maxX && a.minY >= hole.minY && a.maxY <= hole.maxY);
  const plan = tilePlan({ box: box(740, 490), ...everywhere, inked: outside });
  const blank = plan.tiles.filter(({ number }) => number === undefined);
  expect(plan.tiles).toHaveLength(plan.rows * plan.columns);
  expect(numbered(plan).map(({ number }) => number)).toEqual(
    Array.from({ length: plan.tiles.length - blank.length }, (_, i) => i + 1),
  );
  expect(blank.length).toBeGreaterThan(0);
  const numbers = new Set(plan.marks.flatMap(({ sheets }) => sheets));
  expect([...numbers].every((number) => number >= 1 && number <= numbered(plan).length)).toBe(true);
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Stroke } from '../../src/drawing/index.js';
import { clipped } from '../../src/drawing/sheet/clip.js';

const box = { minX: 0, minY: 0, maxX: 100, maxY: 50 };
/** Thousandths: a sheet knows nothing finer. */
const number = fc.integer({ min: -80_000, max: 180_000 }).map((thousandths) => thousandths / 1000);

const lengthOf = (strokes: readonly Stroke[]): number =>
  strokes.reduce((sum, one) => {
    switch (one.kind) {
      case 'line':
        return sum + Math.hypot(one.to[0] - one.from[0], one.to[1] - one.from[1]);
      case 'arc':
        return sum + (one.radius * one.sweepDeg * Math.PI) / 180;
      case 'circle':
        return sum + 2 * Math.PI * one.radius;
      default:
        return sum;
    }
  }, 0);

/** Share of points along a curve that lie in the box, by counting. */
const share = (at: (t: number) => readonly [number, number]): number => {
  const count = 20_000;
  let inside = 0;
  for (let i = 0; i < count; i += 1) {
    const [x, y] = at((i + 0.5) / count);
    if (x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY) inside += 1;
  }
  return inside / count;
};

test('for all lines the piece that stays is as long as what lies in the box', () => {
  fc.assert(
    fc.property(number, number, number, number, (x, y, u, v) => {
      const line: Stroke = { kind: 'line', line: 'visible', from: [x, y], to: [u, v] };
      const whole = Math.hypot(u - x, v - y);
      const meant = whole * share((t) => [x + (u - x) * t, y + (v - y) * t]);
      expect(Math.abs(lengthOf(clipped([line], box)) - meant)).toBeLessThan(whole / 5000 + 1e-6);
    }),
  );
});

test('for all arcs the pieces that stay are arcs of the same circle, as long as what lies in the box', () => {
  fc.assert(
    fc.property(
      number,
      number,
      fc.double({ min: 1, max: 120, noNaN: true }),
      fc.double({ min: -360, max: 360, noNaN: true }),
      fc.double({ min: 1, max: 359, noNaN: true }),
      (x, y, radius, startDeg, sweepDeg) => {
        const arc: Stroke = { kind: 'arc', line: 'visible', centre: [x, y], radius, startDeg, sweepDeg };
        const kept = clipped([arc], box);
        const whole = lengthOf([arc]);
        const meant =
          whole *
          share((t) => {
            const turn = ((startDeg + sweepDeg * t) * Math.PI) / 180;
            return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
          });
        expect(Math.abs(lengthOf(kept) - meant)).toBeLessThan(whole / 2000 + 1e-6);
        for (const one of kept) expect(one).toMatchObject({ kind: 'arc', centre: [x, y], radius });
      },
    ),
  );
});

test('a circle inside stays a circle, one outside vanishes, one on a corner leaves a quarter', () => {
  const circle = (x: number, y: number): Stroke => ({
    kind: 'circle',
    line: 'visible',
    centre: [x, y],
    radius: 5,
  });
  expect(clipped([circle(50, 25)], box)).toEqual([circle(50, 25)]);
  expect(clipped([circle(120, 25)], box)).toEqual([]);
  expect(lengthOf(clipped([circle(0, 0)], box))).toBeCloseTo((2 * Math.PI * 5) / 4, 9);
});

test('words that stand half outside are not shown', () => {
  const words = (x: number): Stroke => ({
    kind: 'text',
    at: [x, 20],
    text: 'mortise',
    height: 2.5,
    anchor: 'start',
    rotationDeg: 0,
  });
  expect(clipped([words(50)], box)).toHaveLength(1);
  expect(clipped([words(95)], box)).toHaveLength(0);
});

import { Clipper, PointInPolygonResult } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { circle, contains, distanceTo, type Profile, reversed, tessellate } from '../../src/profile/index.js';
import { bracket, notchedOutlines } from './outlines.js';

test('a point between an arc and its chord is inside a bulge and outside a hollow', () => {
  const side = (bulge: number): Profile => [
    { x: 0, y: 0, bulge },
    { x: 40, y: 0, bulge: 0 },
    { x: 40, y: 30, bulge: 0 },
    { x: 0, y: 30, bulge: 0 },
  ];
  expect(contains(side(0.25), [20, -4.9])).toBe('inside');
  expect(contains(side(0.25), [20, -5.1])).toBe('outside');
  expect(contains(side(-0.25), [20, 4.9])).toBe('outside');
  expect(contains(side(-0.25), [20, 5.1])).toBe('inside');
  expect(contains(side(-0.25), [20, 5])).toBe('on');
});

test('a point on the chord of an arc, not on the outline, has one answer', () => {
  const hole = circle({ diameter: 10 });
  for (const x of [-4.9, -1, 0, 1e-7, 4.9]) expect(contains(hole, [x, 0])).toBe('inside');
  for (const x of [-6, 6]) expect(contains(hole, [x, 0])).toBe('outside');
  expect(contains(hole, [5, 0])).toBe('on');
  expect(contains(hole, [3, 4])).toBe('on');
});

test('a point on the chord of a hollow is outside, whichever way the chord runs', () => {
  const hollow: Profile = [
    { x: 0, y: 0, bulge: -0.25 },
    { x: 40, y: 0, bulge: -0.25 },
    { x: 40, y: 40, bulge: -0.25 },
    { x: 0, y: 40, bulge: -0.25 },
  ];
  for (const [x, y] of [
    [20, 0],
    [40, 20],
    [20, 40],
    [0, 20],
  ] as const) {
    expect(contains(hollow, [x, y])).toBe('outside');
    expect(contains(reversed(hollow), [x, y])).toBe('outside');
    expect(
      contains(
        hollow.map((v) => ({ ...v, bulge: 0.25 })),
        [x, y],
      ),
    ).toBe('inside');
  }
});

test('a major arc on a short chord holds its whole circle', () => {
  const keyhole: Profile = [
    { x: 0, y: 0, bulge: 3 },
    { x: 10, y: 0, bulge: 0 },
  ];
  // Radius 10·(1 + 9)/12, centre right of the chord at (1 − 9)/12 of it.
  expect(contains(keyhole, [5, -10 * (2 / 3)])).toBe('inside');
  expect(contains(keyhole, [5, -10 * (2 / 3) - 8.3])).toBe('inside');
  expect(contains(keyhole, [5, -10 * (2 / 3) - 8.4])).toBe('outside');
  expect(contains(keyhole, [5, 0.1])).toBe('outside');
});

test('the polygon library agrees for every point that is not within the facets, whichever way the outline runs', () => {
  fc.assert(
    fc.property(
      fc.oneof(notchedOutlines, fc.constant(bracket)),
      fc.integer({ min: -110, max: 110 }),
      fc.integer({ min: -110, max: 110 }),
      (outline, x, y) => {
        fc.pre(distanceTo(outline, [x, y]) > 0.01);
        const path = tessellate(outline).map(([px, py]) => ({
          x: Math.round(px * 1e6),
          y: Math.round(py * 1e6),
        }));
        const other = Clipper.pointInPolygon({ x: x * 1e6, y: y * 1e6 }, path);
        const expected = other === PointInPolygonResult.IsInside ? 'inside' : 'outside';
        expect(contains(outline, [x, y])).toBe(expected);
        expect(contains(reversed(outline), [x, y])).toBe(expected);
      },
    ),
    { numRuns: 400 },
  );
});

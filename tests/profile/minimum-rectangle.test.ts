import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  bounds,
  minimumRectangle,
  obround,
  rectangle,
  regionOf,
  rotate,
  translate,
} from '../../src/profile/index.js';
import { notchedOutlines } from './outlines.js';

test('a turned rectangle is found again with its sides, its centre and its direction', () => {
  fc.assert(
    fc.property(fc.double({ min: -89, max: 89, noNaN: true }), (deg) => {
      const patch = regionOf(rotate(rectangle({ length: 60, width: 20 }), deg, [30, 10]));
      const found = minimumRectangle(patch);
      expect(found.length).toBeCloseTo(60, 9);
      expect(found.width).toBeCloseTo(20, 9);
      expect(found.centre[0]).toBeCloseTo(30, 9);
      expect(found.centre[1]).toBeCloseTo(10, 9);
      expect((Math.atan2(found.along[1], found.along[0]) * 180) / Math.PI).toBeCloseTo(deg, 6);
    }),
  );
});

test('an upright patch is measured upwards and a square one along X', () => {
  expect(minimumRectangle(regionOf(rectangle({ x: 5, length: 20, width: 60 }))).along).toEqual([0, 1]);
  expect(minimumRectangle(regionOf(rectangle({ length: 20, width: 20 }))).along).toEqual([1, 0]);
});

test('the rectangle of a slot is its length over the round ends by its width', () => {
  const found = minimumRectangle(regionOf(rotate(obround({ length: 40, width: 10 }), 37)));
  // The facets of the ends stay within the sagitta of 0.005 mm.
  expect(Math.abs(found.length - 40)).toBeLessThan(0.011);
  expect(found.width).toBeCloseTo(10, 9);
});

test('no rectangle in any of 360 directions is smaller', () => {
  fc.assert(
    fc.property(notchedOutlines, (outline) => {
      const corners = outline.map((v) => ({ ...v, bulge: 0 }));
      const { length, width } = minimumRectangle(regionOf(corners));
      for (let deg = 0; deg < 90; deg += 0.25) {
        const box = bounds(rotate(corners, deg));
        expect((box.maxX - box.minX) * (box.maxY - box.minY)).toBeGreaterThan(length * width - 1e-6);
      }
    }),
    { numRuns: 30 },
  );
});

test('a region of two patches is measured over both', () => {
  const patches = [
    ...regionOf(rectangle({ length: 10, width: 10 })),
    ...regionOf(translate(rectangle({ length: 10, width: 10 }), [90, 0])),
  ];
  const found = minimumRectangle(patches);
  expect(found.length).toBeCloseTo(100, 9);
  expect(found.width).toBeCloseTo(10, 9);
});

test('an empty region has no rectangle', () => {
  expect(() => minimumRectangle([])).toThrow('hull has 0 corners');
});

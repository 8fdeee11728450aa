import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  arcs,
  area,
  bounds,
  circle,
  type Profile,
  perimeter,
  rectangle,
  reversed,
  rotate,
  segments,
  tessellate,
  translate,
} from '../../src/profile/index.js';
import { bracket, convexOutlines, notchedOutlines } from './outlines.js';

test('the radius of a bulged segment is chord·(1 + b²)/(4·b)', () => {
  const quarter: Profile = [
    { x: 0, y: 0, bulge: 0.41421356 },
    { x: 10, y: 0, bulge: 0 },
  ];
  const [arc] = arcs(quarter);
  expect(arc!.radius).toBeCloseTo(7.0710678, 6);
  expect(arc!.includedDeg).toBeCloseTo(90, 5);
  expect(arc!.sense).toBe('counter-clockwise');
  // A counter-clockwise arc has its centre on the left of the chord.
  expect(arc!.centre[0]).toBeCloseTo(5, 9);
  expect(arc!.centre[1]).toBeCloseTo(5, 6);
  // The circular segment r²(θ − sin θ)/2 with θ = 90°.
  expect(area(quarter)).toBeCloseTo((50 * (Math.PI / 2 - 1)) / 2, 5);
});

test('a bulge of one over a chord of 10 mm is a half circle of radius 5 mm', () => {
  const [arc] = arcs([
    { x: 0, y: 0, bulge: 1 },
    { x: 10, y: 0, bulge: 0 },
  ]);
  expect(arc!.radius).toBeCloseTo(5, 12);
  expect(arc!.includedDeg).toBeCloseTo(180, 9);
});

test('rounding a corner takes r²·(1 − π/4) from the wood, and a rounded notch adds it', () => {
  const sharp = 100 * 100 - 50 * 50;
  const corner = 1 - Math.PI / 4;
  expect(area(bracket)).toBeCloseTo(sharp - corner * (25 + 100 + 400) + corner * 64, 8);
});

test('a clockwise outline has the same area below zero', () => {
  expect(area(reversed(bracket))).toBeCloseTo(-area(bracket), 9);
});

test('an area does not lose digits far from the origin', () => {
  const far = translate(rectangle({ length: 10, width: 0.1 }), [1e6, -1e6]);
  expect(area(far)).toBeCloseTo(1, 8);
});

test('the box of an outline reaches the outermost points of its arcs, and no further', () => {
  expect(bounds(circle({ diameter: 10, centre: [100, 50] }))).toEqual({
    minX: 95,
    minY: 45,
    maxX: 105,
    maxY: 55,
  });
  fc.assert(
    fc.property(fc.oneof(convexOutlines, notchedOutlines), (outline) => {
      const box = bounds(outline);
      const points = tessellate(outline, 1e-5);
      // The same box from many points of the outline.
      expect(box.minX).toBeCloseTo(Math.min(...points.map(([x]) => x)), 3);
      expect(box.maxX).toBeCloseTo(Math.max(...points.map(([x]) => x)), 3);
      expect(box.minY).toBeCloseTo(Math.min(...points.map(([, y]) => y)), 3);
      expect(box.maxY).toBeCloseTo(Math.max(...points.map(([, y]) => y)), 3);
    }),
    { numRuns: 60 },
  );
});

test('turning and moving an outline changes neither its area nor its perimeter', () => {
  fc.assert(
    fc.property(notchedOutlines, fc.double({ min: -360, max: 360, noNaN: true }), (outline, deg) => {
      const moved = translate(rotate(outline, deg, [13, -7]), [250, 1200]);
      expect(area(moved)).toBeCloseTo(area(outline), 6);
      expect(perimeter(moved)).toBeCloseTo(perimeter(outline), 6);
    }),
    { numRuns: 60 },
  );
});

test('segments close the loop: each ends where the next begins', () => {
  const pieces = segments(bracket);
  pieces.forEach((piece, i) => {
    expect(pieces[(i + 1) % pieces.length]!.from).toEqual(piece.to);
  });
});

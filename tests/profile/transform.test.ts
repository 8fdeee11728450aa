import { expect, test } from 'vitest';
import { ProfileError } from '../../src/errors.js';
import {
  arcs,
  area,
  bounds,
  clockwise,
  contains,
  counterClockwise,
  mirror,
  reversed,
  transform2d,
} from '../../src/profile/index.js';
import { bracket } from './outlines.js';

test('a mirrored outline keeps its direction, its area and the radius of each arc', () => {
  for (const axis of ['x', 'y'] as const) {
    const other = mirror(bracket, axis);
    expect(area(other)).toBeCloseTo(area(bracket), 9);
    const radii = (profile: typeof other) =>
      arcs(profile)
        .map((arc) => Math.round(arc.radius * 1e6))
        .sort();
    expect(radii(other)).toEqual(radii(bracket));
  }
});

test('mirroring in x changes the sign of y, in y that of x', () => {
  const box = bounds(mirror(bracket, 'x'));
  expect([box.minX, box.minY, box.maxX, box.maxY + 0]).toEqual([0, -100, 100, 0]);
  expect(contains(bracket, [90, 10])).toBe('inside');
  expect(contains(mirror(bracket, 'x'), [90, -10])).toBe('inside');
  expect(contains(mirror(bracket, 'y'), [-90, 10])).toBe('inside');
  expect(contains(mirror(bracket, 'y'), [-90, 90])).toBe('outside');
});

test('an outline mirrored twice is the outline', () => {
  mirror(mirror(bracket, 'y'), 'y').forEach((v, i) => {
    expect(v.x).toBeCloseTo(bracket[i]!.x, 12);
    expect(v.y).toBeCloseTo(bracket[i]!.y, 12);
    expect(v.bulge).toBeCloseTo(bracket[i]!.bulge, 12);
  });
});

test('an outline reversed twice is the outline, and direction can be asked for', () => {
  expect(reversed(reversed(bracket))).toEqual(bracket);
  expect(area(clockwise(bracket))).toBeCloseTo(-area(bracket), 9);
  expect(counterClockwise(bracket)).toEqual(bracket);
  expect(counterClockwise(reversed(bracket))).toEqual(bracket);
});

test('a placement twice as large has four times the area', () => {
  const large = transform2d(bracket, { origin: [5, 5], x: [0, 2], y: [-2, 0] });
  expect(area(large)).toBeCloseTo(4 * area(bracket), 6);
});

test('a placement that would make an arc an ellipse is refused', () => {
  expect(() => transform2d(bracket, { origin: [0, 0], x: [1, 0], y: [0, 2] })).toThrow(ProfileError);
  expect(() => transform2d(bracket, { origin: [0, 0], x: [1, 0], y: [0.1, 1] })).toThrow(ProfileError);
});

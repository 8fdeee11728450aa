import { expect, test } from 'vitest';
import { ProfileError } from '../../src/errors.js';
import { arcs, area, obround, perimeter, polygon, rectangle } from '../../src/profile/index.js';
import { bracket } from './outlines.js';

test('every rounded corner has the radius asked for, in the order of the corners', () => {
  const rounds = arcs(bracket).map((arc) => [Number(arc.radius.toFixed(9)), arc.sense]);
  expect(rounds).toEqual([
    [5, 'counter-clockwise'],
    [10, 'counter-clockwise'],
    [8, 'clockwise'],
    [20, 'counter-clockwise'],
  ]);
});

test('corners given clockwise make the same outline counter-clockwise', () => {
  const corners = [
    { x: 0, y: 0 },
    { x: 0, y: 50, radius: 6 },
    { x: 80, y: 50 },
    { x: 80, y: 0 },
  ];
  expect(area(polygon(corners))).toBeGreaterThan(0);
  expect(area(polygon(corners))).toBeCloseTo(area(polygon(corners.toReversed())), 9);
});

test('a rectangle rounded with half its width is a slot: the arcs use up the ends', () => {
  const rounded = polygon(
    [
      [0, 0],
      [40, 0],
      [40, 10],
      [0, 10],
    ].map(([x, y]) => ({ x: x!, y: y!, radius: 5 })),
  );
  expect(rounded).toHaveLength(6);
  expect(area(rounded)).toBeCloseTo(area(obround({ length: 40, width: 10 })), 9);
  expect(perimeter(rounded)).toBeCloseTo(perimeter(obround({ length: 40, width: 10 })), 9);
});

test('a corner radius that does not fit names the corner, what was received and what is allowed', () => {
  const corners = [
    { x: 0, y: 0 },
    { x: 100, y: 0, radius: 30 },
    { x: 100, y: 50, radius: 21 },
    { x: 0, y: 50 },
  ];
  expect(() => polygon(corners)).toThrow(ProfileError);
  expect(() => polygon(corners)).toThrow('corner 2 of 4 at (100 mm, 0 mm) has a radius of 30 mm');
  expect(() => polygon(corners)).toThrow('from 0 to 29 mm');
  // The allowed radius is allowed.
  const [a, b, c, d] = corners;
  expect(arcs(polygon([a!, { ...b!, radius: 29 }, c!, d!]))).toHaveLength(2);
});

test('a radius below zero is refused', () => {
  const corners = [
    { x: 0, y: 0, radius: -1 },
    { x: 10, y: 0 },
    { x: 0, y: 10 },
  ];
  expect(() => polygon(corners)).toThrow('corner 1 of 3 at (0 mm, 0 mm) has a radius of -1 mm');
});

test('a rectangle without width is refused', () => {
  expect(() => rectangle({ length: 100, width: 0 })).toThrow(ProfileError);
});

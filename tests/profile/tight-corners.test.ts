import { expect, test } from 'vitest';
import { circle, obround, rectangle, tessellate, tightCorners } from '../../src/profile/index.js';
import { bracket } from './outlines.js';

test('a cutter of 6 mm radius cannot reach into the four corners of a square opening', () => {
  const opening = rectangle({ length: 40, width: 20 });
  expect(tightCorners(opening, 6, 'inside').map(({ at, radius }) => [...at, radius])).toEqual([
    [0, 0, 0],
    [40, 0, 0],
    [40, 20, 0],
    [0, 20, 0],
  ]);
  expect(tightCorners(opening, 6, 'outside')).toEqual([]);
});

test('a notch rounded 8 mm is too tight for a bush of 10 mm radius and not for one of 8 mm', () => {
  const [notch, ...others] = tightCorners(bracket, 10, 'outside');
  expect(others).toEqual([]);
  expect(notch!.radius).toBeCloseTo(8, 9);
  // The middle of an arc about (58, 58) that runs from (58, 50) to (50, 58).
  expect(notch!.at[0]).toBeCloseTo(58 - 8 * Math.SQRT1_2, 9);
  expect(notch!.at[1]).toBeCloseTo(58 - 8 * Math.SQRT1_2, 9);
  expect(tightCorners(bracket, 8, 'outside')).toEqual([]);
});

test('seen from inside, the bracket has its two sharp corners and its tight rounds', () => {
  const radii = tightCorners(bracket, 12, 'inside').map((corner) => Number(corner.radius.toFixed(6)));
  expect(radii.sort((a, b) => a - b)).toEqual([0, 0, 5, 10]);
});

test('a slot takes the cutter of its own width and no larger one', () => {
  expect(tightCorners(obround({ length: 40, width: 10 }), 5, 'inside')).toEqual([]);
  expect(tightCorners(obround({ length: 40, width: 10 }), 5.5, 'inside')).toHaveLength(2);
});

test('facets of an arc are not corners', () => {
  const facets = tessellate(circle({ diameter: 80 })).map(([x, y]) => ({ x, y, bulge: 0 }));
  expect(tightCorners(facets, 10, 'inside')).toEqual([]);
});

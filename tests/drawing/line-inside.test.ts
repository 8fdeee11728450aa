import { expect, test } from 'vitest';
import { lineInside } from '../../src/drawing/index.js';
import { circle, polygon, rectangle } from '../../src/profile/index.js';

const lengths = (pieces: ReturnType<typeof lineInside>) =>
  pieces.map(([start, end]) => Math.hypot(end[0] - start[0], end[1] - start[1]));

test('a line across a disc is its chord', () => {
  const disc = circle({ diameter: 100, centre: [300, -20] });
  const pieces = lineInside([disc], [0, 10], [1, 0]);
  expect(lengths(pieces)).toEqual([expect.closeTo(2 * Math.sqrt(50 ** 2 - 30 ** 2), 6)]);
});

test('a line past the disc has no piece', () => {
  expect(lineInside([circle({ diameter: 100 })], [0, 51], [1, 0])).toEqual([]);
});

test('a line across a U is two pieces', () => {
  const u = polygon(
    [
      [0, 0],
      [90, 0],
      [90, 50],
      [60, 50],
      [60, 20],
      [30, 20],
      [30, 50],
      [0, 50],
    ].map(([x, y]) => ({ x: x!, y: y! })),
  );
  expect(lengths(lineInside([u], [0, 40], [1, 0]))).toEqual([expect.closeTo(30, 6), expect.closeTo(30, 6)]);
  // along the bottom of the notch the line touches wood on one side all the way
  expect(lengths(lineInside([u], [0, 20], [1, 0]))).toEqual([expect.closeTo(90, 6)]);
});

test('a line along an edge, or beside it by a rounding error, counts as inside', () => {
  const board = rectangle({ length: 200, width: 80 });
  for (const y of [0, 1e-9, -1e-5, 80 + 1e-5]) {
    expect(lengths(lineInside([board], [50, y], [1, 0]))).toEqual([expect.closeTo(200, 3)]);
  }
  expect(lineInside([board], [50, -0.01], [1, 0])).toEqual([]);
});

test('two outlines keep what lies in both', () => {
  const pieces = lineInside(
    [rectangle({ length: 200, width: 80 }), rectangle({ x: 150, length: 100, width: 80 })],
    [0, 40],
    [1, 0],
  );
  expect(lengths(pieces)).toEqual([expect.closeTo(50, 6)]);
});

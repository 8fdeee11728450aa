import { expect, test } from 'vitest';
import { type Board, makeBoard } from '../../src/board/index.js';
import { onceAShape } from '../../src/board/once-a-shape.js';

const board = (given: Partial<Parameters<typeof makeBoard>[0]> = {}): Board =>
  makeBoard({
    id: 'rail',
    material: 'birch plywood',
    blank: { length: 400, width: 90, thickness: 18 },
    ...given,
  });

/** Counts how often the work is done. */
function counted(): { areaOf: (board: Board) => number; times: () => number } {
  let times = 0;
  const areaOf = onceAShape(({ blank }) => {
    times += 1;
    return blank.length * blank.width;
  });
  return { areaOf, times: () => times };
}

test('two boards of one shape and different names are worked out once', () => {
  const { areaOf, times } = counted();
  expect([areaOf(board()), areaOf(board({ id: 'other-rail' }))]).toEqual([36000, 36000]);
  expect(times()).toBe(1);
});

test('a board that differs in blank, bevel or opening is worked out by itself', () => {
  const { areaOf, times } = counted();
  const bevel = { id: 'chamfer', point: [0, 0, 10], normal: [0, -Math.SQRT1_2, Math.SQRT1_2] } as const;
  const square = [
    [100, 30],
    [120, 30],
    [120, 50],
    [100, 50],
  ].map(([x, y]) => ({ x: x!, y: y!, bulge: 0 }));
  expect(areaOf(board())).toBe(36000);
  expect(areaOf(board({ blank: { length: 401, width: 90, thickness: 18 } }))).toBe(36090);
  expect(areaOf(board({ bevels: [bevel] }))).toBe(36000);
  expect(areaOf(board({ bevels: [{ ...bevel, id: 'top-chamfer' }] }))).toBe(36000);
  expect(areaOf(board({ openings: [{ id: 'window', outline: square }] }))).toBe(36000);
  expect(times()).toBe(5);
});

test('more shapes than are kept are still each given their own figure', () => {
  const { areaOf } = counted();
  const widths = Array.from({ length: 1500 }, (_, i) => 50 + i / 10);
  const boards = widths.map((width) => board({ blank: { length: 400, width, thickness: 18 } }));
  for (const _ of [1, 2]) expect(boards.map(areaOf)).toEqual(widths.map((width) => 400 * width));
});

import { expect, test } from 'vitest';
import { makeBoard } from '../../src/board/index.js';
import { BoardError } from '../../src/errors.js';
import { speaker } from '../../src/length/index.js';
import { rectangle } from '../../src/profile/index.js';

const blank = { length: 400, width: 120, thickness: 28 };

const refusal = (make: () => unknown): BoardError => {
  try {
    make();
  } catch (error) {
    if (error instanceof BoardError) return error;
    throw error;
  }
  throw new Error('it was not refused');
};

test('a board without an outline is its whole blank, named after its id, with nothing cut yet', () => {
  const board = makeBoard({ id: 'left-side', blank });
  expect(board.name).toBe('left side');
  expect(board.outline.map(({ x, y }) => [x, y]).toSorted()).toEqual(
    [
      [0, 0],
      [400, 0],
      [400, 120],
      [0, 120],
    ].toSorted(),
  );
  expect([board.bevels, board.openings, board.mortises, board.holes, board.slots]).toEqual([
    [],
    [],
    [],
    [],
    [],
  ]);
});

test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('a blank with a width of %d is refused', (width) => {
  const error = refusal(() => makeBoard({ id: 'rail', blank: { ...blank, width } }));
  expect(error.code).toBe('blank-size');
  expect(error.message).toMatch(/^board rail: its blank has a width of .*; it must be more than 0: change/);
});

test('an outline that leaves the blank is refused with how far, in mm and in inches', () => {
  const outline = rectangle({ length: 401.27, width: 120 });
  const error = refusal(() => makeBoard({ id: 'rail', blank, outline }));
  expect(error.code).toBe('outline-off-blank');
  expect(error.message).toContain('leaves the blank, 400.0 mm long and 120.0 mm wide, by 1.27 mm');
  // 1.27 mm = 0.05 in
  expect(error.explain(speaker('in'))).toContain('15-3/4" long and 4-23/32" wide, by 0.05"');
});

test('an outline on the border of the blank is accepted', () => {
  const outline = rectangle({ length: 400, width: 120 });
  expect(makeBoard({ id: 'rail', blank, outline }).outline).toBe(outline);
});

test.each(['con', 'AUX', 'nul.left', 'com1', 'a/b', '.hidden', 'rail.', ''])(
  'a board called %j is refused: no file can be named after it everywhere',
  (id) => {
    expect(() => makeBoard({ id, blank: { length: 10, width: 10, thickness: 10 } })).toThrow(
      /^a board is called .* like con or aux$/,
    );
  },
);

test.each(['console', 'rail-left', 'com10', 'Füllung 2'])('a board may be called %j', (id) => {
  expect(makeBoard({ id, blank: { length: 10, width: 10, thickness: 10 } }).id).toBe(id);
});

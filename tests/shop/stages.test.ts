import fc from 'fast-check';
import { expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import stool from '../../models/stool.js';
import { stockVolume } from '../../src/board/index.js';
import { readParameters } from '../../src/model/index.js';
import { area, bounds } from '../../src/profile/index.js';
import { stagesOf } from '../../src/shop/index.js';

const stoolBoard = (id: string, raw: Readonly<Record<string, string | number>> = {}) =>
  stool.build(readParameters(stool, raw, 'mm')).boards.find(({ board }) => board.id === id)!.board;

test('the blank comes first, the whole outline with bevels and openings last', () => {
  const tread = stoolBoard('tread');
  const [blank, , whole] = stagesOf(tread);
  expect(stockVolume(blank!.board).volume).toBeCloseTo(420 * 240 * 28, 3);
  expect(whole!.board.openings).toEqual(tread.openings);
  expect(whole!.board.outline).toEqual(tread.outline);
});

test('the ends of a stretcher are cut by two saw cuts, and that is all there is to it', () => {
  const stretcher = stoolBoard('stretcher');
  const [, ends, whole] = stagesOf(stretcher);
  expect(ends!.board.outline).toEqual(whole!.board.outline);
});

test('a side with its ends cut has both bevels over its whole width, and neither taper nor arch', () => {
  const side = stoolBoard('left-side');
  const { length, width, thickness } = side.blank;
  const ends = stagesOf(side)[1]!.board;
  expect(Math.abs(area(ends.outline))).toBeCloseTo(length * width, 6);
  expect(ends.bevels.map(({ id }) => id)).toEqual(['foot', 'top']);
  // each bevel takes a triangle of thickness by thickness · tan 10° over the width
  const taken = thickness ** 2 * Math.tan((10 * Math.PI) / 180) * width;
  expect(stockVolume(ends).volume).toBeCloseTo(length * width * thickness - taken, 2);
});

test('the seat of a stepped side does not go through, so it waits for the outline', () => {
  const side = stoolBoard('left-side', { treads: 2, steppedSide: 'one-board' });
  const [, ends, whole] = stagesOf(side);
  expect(ends!.board.bevels.map(({ id }) => id)).not.toContain('step');
  expect(whole!.board.bevels.map(({ id }) => id)).toContain('step');
  expect(bounds(ends!.board.outline)).toEqual(bounds(stagesOf(side)[0]!.board.outline));
});

test('a board without cuts looks the same at every stage, and still has three', () => {
  const design = frameModel.build(readParameters(frameModel, {}, 'mm'));
  for (const { board } of design.boards) {
    const volumes = stagesOf(board).map((stage) => stockVolume(stage.board).volume);
    expect(volumes).toHaveLength(3);
    expect(Math.max(...volumes) - Math.min(...volumes)).toBeLessThan(1e-6);
  }
});

test('mortises are left out until they are said to be cut', () => {
  const side = stoolBoard('left-side');
  const first = side.mortises[0]!.id;
  expect(stagesOf(side).flatMap((stage) => stage.board.mortises)).toEqual([]);
  for (const stage of stagesOf(side, new Set([first])))
    expect(stage.board.mortises.map(({ id }) => id)).toEqual([first]);
});

test('for all rakes and tapers no stage has more wood than the one before it', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 8, noNaN: true }),
      fc.constantFrom(1, 2),
      (rake, taper, treads) => {
        for (const id of ['left-side', 'right-side', 'stretcher']) {
          const [blank, ends, whole] = stagesOf(stoolBoard(id, { rake, taper, treads })).map(
            (stage) => stockVolume(stage.board).volume,
          );
          expect(ends!).toBeLessThanOrEqual(blank! + 1e-3);
          expect(whole!).toBeLessThanOrEqual(ends! + 1e-3);
        }
      },
    ),
    { numRuns: 25 },
  );
});

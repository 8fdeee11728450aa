import { describe, expect, test } from 'vitest';
import { type Board, faces, makeBoard } from '../../src/board/index.js';
import type { Vec3 } from '../../src/frame/index.js';
import { polygon } from '../../src/profile/index.js';
import { boardEnds, faceWords, stagesOf } from '../../src/shop/index.js';
import { stoolWith } from './designs.js';

const tan = (deg: number) => Math.tan((deg * Math.PI) / 180);

/** A rail 400 × 60, its ends sawn off square by `start` and `end` mm of run over the width; the sign says which edge is longer. */
const rail = (start: number, end: number): Board =>
  makeBoard({
    id: 'rail',
    blank: { length: 400, width: 60, thickness: 20 },
    outline: polygon([
      { x: Math.max(0, start), y: 0 },
      { x: 400 - Math.max(0, end), y: 0 },
      { x: 400 - Math.max(0, -end), y: 60 },
      { x: Math.max(0, -start), y: 60 },
    ]),
  });

const run = 60 * tan(8);

describe('a rail 400 × 60 with ends at 8°', () => {
  test('leaning one way is a parallelogram', () => {
    const ends = boardEnds(rail(run, -run));
    expect(ends.ends).toBe('parallel');
    expect(ends.anglesDeg[0]).toBeCloseTo(8, 6);
    expect(ends.anglesDeg[1]).toBeCloseTo(8, 6);
    expect(ends.longPoint).toBeCloseTo(400, 6);
    expect(ends.shortPoint).toBeCloseTo(400 - 2 * run, 6);
    expect(ends.centreLine).toBeCloseTo(400 - run, 6);
  });

  test('leaning against each other is a trapezoid', () => {
    const ends = boardEnds(rail(run, run));
    expect(ends.ends).toBe('mirrored');
    expect(ends.longPoint).toBeCloseTo(400, 6);
    expect(ends.shortPoint).toBeCloseTo(400 - 2 * run, 6);
    expect(ends.centreLine).toBeCloseTo(400 - run, 6);
  });

  test('at one end only, or at two angles, or at none is told so', () => {
    expect(boardEnds(rail(run, 0)).ends).toBe('one end angled');
    expect(boardEnds(rail(run, 60 * tan(5))).ends).toBe('different angles');
    expect(boardEnds(rail(0, 0)).ends).toBe('square');
  });

  test('one end a hundredth of a degree off is not mirrored any more', () => {
    expect(boardEnds(rail(run, 60 * tan(8.01))).ends).toBe('different angles');
  });
});

describe.each([30, 45, 60])('a rail mitred at %i°', (deg) => {
  const mitred = rail(-60 * tan(deg), -60 * tan(deg));
  const ends = boardEnds(mitred);

  test('has mirrored ends, set from long point to long point', () => {
    expect(ends.ends).toBe('mirrored');
    expect(ends.anglesDeg[0]).toBeCloseTo(deg, 6);
    expect(ends.longPoint).toBeCloseTo(400, 4);
    expect(ends.shortPoint).toBeCloseTo(400 - 120 * tan(deg), 4);
    expect(ends.stopTo).toContain('long point to long point');
  });

  test('has its ends cut before its outline', () => {
    expect(stagesOf(mitred).find(({ name }) => name === 'ends cut')!.board.outline).toEqual(mitred.outline);
  });
});

test('a mitre of 45° is an end, whichever way its last digit falls', () => {
  const mitred = rail(-60, -60);
  const slanted = faces(mitred).filter(({ id }) => id.startsWith('edge-'));
  expect(slanted.map(({ grain }) => grain)).toEqual(['end', 'end']);
  expect(slanted.map(({ id }) => faceWords(mitred, id)).toSorted()).toEqual([
    'angled opposite end',
    'angled reference end',
  ]);
});

test('a cut with a name of its own is called by it, one with a number by its side', () => {
  const square = rail(0, 0);
  const lean = Math.SQRT1_2;
  const called = (id: string, normal: Vec3) =>
    faceWords({ ...square, bevels: [{ id, point: [0, 0, 0], normal }] }, id);
  expect(called('foot', [-lean, 0, -lean])).toBe('bevelled foot end');
  expect(called('bevel-front-top', [0, lean, lean])).toBe('bevelled front top edge');
  expect(called('taper-back', [-lean, 0, lean])).toBe('tapered back end');
  expect(called('lower-end', [-lean, 0, lean])).toBe('bevelled lower end');
  expect(called('cut-2', [0, -lean, lean])).toBe('bevelled reference edge');
});

describe('the raked sides of the stool', () => {
  const boards = new Map(stoolWith({ rake: '8deg' }).boards.map(({ board }) => [board.id, board]));

  test('have parallel bevels, the stretcher between them mirrored ends', () => {
    for (const [id, word] of [
      ['left-side', 'parallel'],
      ['right-side', 'parallel'],
      ['stretcher', 'mirrored'],
      ['tread', 'square'],
    ] as const)
      expect(boardEnds(boards.get(id)!).ends).toBe(word);
  });

  test('lose the thickness times the tangent of the rake at each end', () => {
    const side = boards.get('left-side')!;
    const { longPoint, shortPoint, anglesDeg } = boardEnds(side);
    expect(anglesDeg[0]).toBeCloseTo(8, 6);
    expect(longPoint).toBeCloseTo(side.blank.length, 3);
    expect(longPoint - shortPoint).toBeCloseTo(2 * side.blank.thickness * tan(8), 3);
  });
});

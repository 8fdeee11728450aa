import { describe, expect, test } from 'vitest';
import { assemble, type Design, exploded, type PlacedBoard } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { add, length, scale, subtract, type Vec3, WORLD } from '../../src/frame/index.js';

/** Air beyond a drawn-out tenon. */
const AIR = 25;

const block = (id: string, origin: Vec3, size: Vec3 = [100, 60, 60]): PlacedBoard => ({
  board: makeBoard({ id, blank: { length: size[0], width: size[1], thickness: size[2] } }),
  place: { ...WORLD, origin },
});
const design = (
  boards: readonly PlacedBoard[],
  pairs: readonly string[],
  more: Partial<Design> = {},
): Design =>
  assemble({
    name: 'row',
    title: 'Row',
    cutter: 8,
    boards,
    joints: pairs.map((pair) => ({
      a: pair[0]!,
      b: pair[1]!,
      options: { depths: { [pair[0]!]: 15, [pair[1]!]: 15 } },
    })),
    ...more,
  });
const at = (shifts: ReadonlyMap<string, Vec3>, id: string): Vec3 => shifts.get(id)!;
/** Deep 15 in both boards, less a gap of 1 at each end, and some air. */
const APART = 15 + 15 - 2 + AIR;

describe('the exploded view', () => {
  test('of a chain draws every joint a tenon and some air apart, with the first board at rest', () => {
    const shifts = exploded(
      design(
        [block('a', [0, 0, 0]), block('b', [100, 0, 0]), block('c', [200, 0, 0]), block('d', [200, 60, 0])],
        ['ab', 'bc', 'cd'],
      ),
    );
    expect(at(shifts, 'a')).toEqual([0, 0, 0]);
    // nothing contradicts: the least squares are met exactly, to what a picture shows
    const expected: Record<string, Vec3> = {
      b: [APART, 0, 0],
      c: [2 * APART, 0, 0],
      d: [2 * APART, APART, 0],
    };
    for (const [id, shift] of Object.entries(expected)) {
      expect(length(subtract(at(shifts, id), shift)), id).toBeLessThan(1);
    }
  });

  test('rests every tenon half way between its boards', () => {
    const row = design([block('a', [0, 0, 0]), block('b', [100, 0, 0])], ['ab']);
    const shifts = exploded(row);
    for (const tenon of row.joints[0]!.tenons) {
      expect(at(shifts, tenon.id)).toEqual(scale(add(at(shifts, 'a'), at(shifts, 'b')), 1 / 2));
    }
  });

  test('of a ring whose wishes agree moves all four sides out', () => {
    const ring = design(
      [
        block('a', [0, 0, 0], [300, 60, 60]),
        block('b', [0, 60, 0], [60, 200, 60]),
        block('c', [240, 60, 0], [60, 200, 60]),
        block('d', [0, 260, 0], [300, 60, 60]),
      ],
      ['ab', 'ac', 'bd', 'cd'],
    );
    const shifts = exploded(ring);
    for (const id of ['b', 'c']) expect(length(subtract(at(shifts, id), [0, APART, 0]))).toBeLessThan(0.5);
    expect(length(subtract(at(shifts, 'd'), [0, 2 * APART, 0]))).toBeLessThan(0.5);
  });

  test('of a ring whose wishes contradict shares the error alike, by least squares', () => {
    // three in a row, and the outer two wish each other one joint apart as well
    const ring = design(
      [block('a', [0, 0, 0]), block('b', [100, 0, 0]), block('c', [200, 0, 0])],
      ['ab', 'bc'],
    );
    const closing = { ...ring.joints[1]!, id: 'ac', a: 'a', b: 'c', tenons: [] as const };
    const closed = { ...ring, joints: [...ring.joints, { ...closing, tenons: ring.joints[1]!.tenons }] };
    const shifts = exploded(closed);
    // minimise (b − w)² + (c − b − w)² + (c − w)²: b = 2w/3, c = 4w/3
    expect(at(shifts, 'b')[0]).toBeCloseTo((2 / 3) * APART, 0);
    expect(at(shifts, 'c')[0]).toBeCloseTo((4 / 3) * APART, 0);
  });

  test('puts pieces where the design says', () => {
    const shifts = exploded(
      design([block('a', [0, 0, 0]), block('b', [100, 0, 0])], ['ab'], { explode: { b: [0, 0, 300] } }),
    );
    expect(at(shifts, 'b')).toEqual([0, 0, 300]);
  });

  test('lets boards without joints fly off the rest, square to their wide face: a lid up, a floor down', () => {
    const flat: Vec3 = [200, 60, 10];
    const shifts = exploded(
      design(
        [
          block('a', [0, 0, 0]),
          block('b', [100, 0, 0]),
          block('lid', [0, 0, 60], flat),
          block('floor', [0, 0, -10], flat),
        ],
        ['ab'],
      ),
    );
    expect(at(shifts, 'lid')).toEqual([0, 0, 10 + AIR]);
    expect(at(shifts, 'floor')).toEqual([0, 0, -10 - AIR]);
  });

  test('moves a second piece, joined in itself, off as a whole, its own joints drawn apart', () => {
    const shifts = exploded(
      design(
        [block('a', [0, 0, 0]), block('b', [100, 0, 0]), block('c', [0, 0, 200]), block('d', [100, 0, 200])],
        ['ab', 'cd'],
      ),
    );
    expect(at(shifts, 'c')[2]).toBe(60 + AIR);
    expect(at(shifts, 'd')[2]).toBe(60 + AIR);
    expect(length(subtract(at(shifts, 'd'), at(shifts, 'c')))).toBeCloseTo(APART, 0);
  });
});

import { describe, expect, test } from 'vitest';
import { assemble, type PlacedBoard } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { WORLD } from '../../src/frame/index.js';
import { obround } from '../../src/profile/index.js';
import type { Asked } from '../../src/strength/index.js';
import { openings } from '../../src/strength/openings.js';

const slat = (id: string, y: number, opening?: number): PlacedBoard => ({
  board: makeBoard({
    id,
    material: 'white ash',
    blank: { length: 400, width: 80, thickness: 20 },
    openings:
      opening === undefined
        ? []
        : [{ id: 'slot', outline: obround({ length: 120, width: opening, centre: [200, 40] }) }],
  }),
  place: { ...WORLD, origin: [0, y, 0] },
});

const found = (boards: readonly PlacedBoard[], child = true) => {
  const design = assemble({ name: 'slats', title: 'Slats', cutter: 8, boards });
  return openings({ design, user: { kg: 150, child } } as Asked);
};

const codes = (boards: readonly PlacedBoard[], child = true) =>
  found(boards, child).margins.map(({ code, figure }) => [code, Math.round(figure * 100) / 100]);

/** Two slats 80 wide, so far apart. */
const apart = (gap: number) => [slat('near', 0), slat('far', 80 + gap)];

describe('where a child uses the piece', () => {
  test.each<[gap: number, code: string]>([
    [5.1, 'finger-opening'],
    [8, 'finger-opening'],
    [11.9, 'finger-opening'],
    [89.5, 'head-opening'],
    [150, 'head-opening'],
    [229, 'head-opening'],
  ])('slats %s mm apart are told as %s', (gap, code) => {
    expect(codes(apart(gap))).toEqual([[code, gap]]);
  });

  test.each([0, 3, 5, 12, 40, 89, 230, 400])('slats %s mm apart are not', (gap) => {
    expect(codes(apart(gap))).toEqual([]);
  });

  test('a slot in a board counts by its width, and one for a hand is none', () => {
    expect(codes([slat('one', 0, 10)])).toEqual([['finger-opening', 10]]);
    expect(codes([slat('one', 0, 30)])).toEqual([]);
  });

  test('they are notes alone, at their place, and nothing is said to be fit for a child', () => {
    const { margins, notComputed } = found(apart(8));
    expect(margins[0]).toMatchObject({ subjects: ['near', 'far'], note: 12 });
    expect(margins[0]).not.toHaveProperty('error');
    expect(margins[0]!.at![1]).toBeCloseTo(84, 6);
    expect(notComputed.map(({ what }) => what)).toEqual([
      'whether it is fit for a child',
      'where fingers are squeezed',
    ]);
  });
});

test('where no child uses it nothing is told of openings', () => {
  expect(found([...apart(8), slat('third', 300, 10)], false)).toEqual({ margins: [], notComputed: [] });
});

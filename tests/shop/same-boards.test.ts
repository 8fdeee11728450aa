import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Board, type Mortise, makeBoard } from '../../src/board/index.js';
import { frame, type Vec3 } from '../../src/frame/index.js';
import { boardKinds } from '../../src/shop/index.js';
import {
  type Body,
  type Kernel,
  sharedVolume,
  solidsOf,
  startKernel,
  volume,
} from '../../src/solid/index.js';
import { stoolWith } from './designs.js';

const mortiseAt = (id: string, origin: Vec3, out: Vec3, along: Vec3): Mortise => ({
  id,
  face: 'any',
  at: frame(origin, out, along),
  width: 8,
  length: 40,
  depth: 20,
  joint: id,
  tenon: id,
});

const leg = (id: string, mortises: readonly Mortise[]): Board => ({
  ...makeBoard({ id, blank: { length: 400, width: 40, thickness: 40 } }),
  mortises,
});

/** A square leg with mortises near its top in two faces that meet, at different heights. */
const legWith = (id: string, second: 'far' | 'near') =>
  leg(id, [
    mortiseAt('one', [350, 20, 40], [0, 0, 1], [1, 0, 0]),
    second === 'far'
      ? mortiseAt('two', [300, 40, 20], [0, 1, 0], [1, 0, 0])
      : mortiseAt('two', [300, 0, 20], [0, -1, 0], [1, 0, 0]),
  ]);

const sorted = (boards: readonly Board[]) =>
  boardKinds(boards).map((kind) => ({
    ids: kind.boards.map(({ id }) => id),
    handed: kind.handed,
    mirrorOf: kind.mirrorOf,
  }));

test('legs with mortises in two faces that meet are left and right, and stay apart', () => {
  expect(sorted([legWith('a', 'far'), legWith('b', 'near'), legWith('c', 'far')])).toEqual([
    { ids: ['a', 'c'], handed: true, mirrorOf: 'b' },
    { ids: ['b'], handed: true, mirrorOf: 'a' },
  ]);
});

test('a leg turned about its length or end for end is the same leg', () => {
  const upright = leg('a', [mortiseAt('one', [350, 20, 40], [0, 0, 1], [1, 0, 0])]);
  const quarter = leg('b', [mortiseAt('one', [350, 0, 20], [0, -1, 0], [1, 0, 0])]);
  const swapped = leg('c', [mortiseAt('one', [50, 20, 40], [0, 0, 1], [-1, 0, 0])]);
  expect(sorted([upright, quarter, swapped])).toEqual([
    { ids: ['a', 'b', 'c'], handed: false, mirrorOf: undefined },
  ]);
});

test.each([
  ['deeper by 0.1 mm', { depth: 20.1 }],
  ['longer by 0.1 mm', { length: 40.1 }],
  ['wider by 0.1 mm', { width: 8.1 }],
])('a board with a mortise %s is another board', (_what, change) => {
  const one = mortiseAt('one', [350, 20, 40], [0, 0, 1], [1, 0, 0]);
  expect(boardKinds([leg('a', [one]), leg('b', [{ ...one, ...change }])])).toHaveLength(2);
});

test('a board of another wood is another board', () => {
  const blank = { length: 300, width: 60, thickness: 20 };
  expect(
    boardKinds([makeBoard({ id: 'a', blank }), makeBoard({ id: 'b', blank, material: 'hard maple' })]),
  ).toHaveLength(2);
});

interface Plank {
  readonly taper: number;
  readonly spots: readonly { readonly x: number; readonly y: number; readonly up: boolean }[];
}

/** A plank with random mortises in its wide faces and a tapered edge, moved bodily by a half turn or mirrored. */
const anyPlank: fc.Arbitrary<Plank> = fc.record({
  taper: fc.integer({ min: 5, max: 30 }),
  spots: fc.array(
    fc.record({
      x: fc.integer({ min: 60, max: 340 }),
      y: fc.integer({ min: 30, max: 60 }),
      up: fc.boolean(),
    }),
    { minLength: 1, maxLength: 4 },
  ),
});

const turns: readonly (readonly [number, number, number])[] = [
  [1, -1, -1],
  [-1, 1, -1],
  [-1, -1, 1],
];
const mirrors: readonly (readonly [number, number, number])[] = [
  [-1, 1, 1],
  [1, -1, 1],
  [1, 1, -1],
  [-1, -1, -1],
];

function plank(id: string, { taper, spots }: Plank, [sx, sy, sz]: readonly [number, number, number]): Board {
  const [length, width, thickness] = [400, 100, 24];
  const place = (x: number, y: number, z: number): Vec3 => [
    sx > 0 ? x : length - x,
    sy > 0 ? y : width - y,
    sz > 0 ? z : thickness - z,
  ];
  const corners = [
    [0, 0],
    [length, 0],
    [length, width - taper],
    [0, width],
  ].map(([x, y]) => {
    const [px, py] = place(x!, y!, 0);
    return { x: px, y: py, bulge: 0 };
  });
  return {
    ...makeBoard({
      id,
      blank: { length, width, thickness },
      outline: sx * sy > 0 ? corners : corners.toReversed(),
    }),
    mortises: spots.map(({ x, y, up }, i) =>
      mortiseAt(`m${i}`, place(x, y, up ? thickness : 0), [0, 0, up === sz > 0 ? 1 : -1], [1, 0, 0]),
    ),
  };
}

describe('for all planks', () => {
  test('a plank turned over or end for end is one kind with itself', () => {
    fc.assert(
      fc.property(anyPlank, fc.constantFrom(...turns), (given, turn) => {
        expect(boardKinds([plank('a', given, [1, 1, 1]), plank('b', given, turn)])).toHaveLength(1);
      }),
    );
  });

  test('a handed plank and its reflection are two kinds that name each other; others are one', () => {
    fc.assert(
      fc.property(anyPlank, fc.constantFrom(...mirrors), (given, mirror) => {
        const kinds = boardKinds([plank('a', given, [1, 1, 1]), plank('b', given, mirror)]);
        // a taper on one edge leaves only the plane of the board as a plane of symmetry
        const depth = ({ x, y, up }: (typeof given.spots)[number]) => `${x} ${y} ${up}`;
        const there = given.spots.map(depth).toSorted();
        const back = given.spots.map((spot) => depth({ ...spot, up: !spot.up })).toSorted();
        const symmetric = there.join() === back.join();
        expect(kinds.length).toBe(symmetric ? 1 : 2);
        if (!symmetric) expect(kinds.map(({ mirrorOf }) => mirrorOf)).toEqual(['b', 'a']);
      }),
    );
  });
});

describe('the sides of the stool, laid on each other as solids', () => {
  let kernel: Kernel;
  beforeAll(async () => {
    kernel = await startKernel();
  });
  afterAll(() => kernel.dispose());

  /** The most wood two boards share in any of the four ways a blank fills its own box. */
  function bestOverlap(design: ReturnType<typeof stoolWith>): number {
    const solids = solidsOf(kernel, design);
    const [left, right] = ['left-side', 'right-side'].map((id) => solids.boards.get(id)!);
    const { length, width, thickness } = left!.board.blank;
    const shares = [[1, 1, 1] as const, ...turns].map(([x, y, z]) => {
      const turned = kernel.keep(
        right!.own.transform([
          ...[x, 0, 0, 0],
          ...[0, y, 0, 0],
          ...[0, 0, z, 0],
          ...[x < 0 ? length : 0, y < 0 ? width : 0, z < 0 ? thickness : 0, 1],
        ] as Parameters<Body['transform']>[0]),
      );
      return sharedVolume(left!.own, turned) / volume(left!.own);
    });
    return Math.max(...shares);
  }

  test('with one tread they are the same board', () => {
    const design = stoolWith();
    expect(bestOverlap(design)).toBeGreaterThan(1 - 1e-6);
    const kinds = boardKinds(design.boards.map(({ board }) => board));
    expect(kinds.find(({ boards }) => boards[0]!.id === 'left-side')!.boards).toHaveLength(2);
  });

  test('with two treads they are mirror images that no turn brings together', () => {
    const design = stoolWith({ treads: 2 });
    expect(bestOverlap(design)).toBeLessThan(0.999);
    const kinds = boardKinds(design.boards.map(({ board }) => board));
    const left = kinds.find(({ boards }) => boards[0]!.id === 'left-side')!;
    expect([left.boards.length, left.handed, left.mirrorOf]).toEqual([1, true, 'right-side']);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  assemble,
  legBetween,
  mirrored,
  type PlacedBoard,
  planeOf,
  repeatedAlong,
  repeatedRound,
  trimmed,
  trimmedTo,
} from '../../src/assembly/index.js';
import { makeBoard, sawAngles, withGroove } from '../../src/board/index.js';
import { BoardError } from '../../src/errors.js';
import {
  add,
  cross,
  dot,
  type Frame,
  frame,
  heightOver,
  leaning,
  levelAt,
  type Plane,
  pointOut,
  scale,
  type Vec3,
  WORLD,
} from '../../src/frame/index.js';
import { circle, obround, polygon } from '../../src/profile/index.js';
import { type Body, box, meshOf, sharedVolume, volume } from '../../src/solid/index.js';
import { onSolids } from '../checks/sample-design.js';
import { seed } from '../properties/seed.js';

const asDesign = (boards: readonly PlacedBoard[]) => assemble({ name: 'd', title: 'D', cutter: 8, boards });

/** The corners of a body as the kernel has them, assembly frame. */
const corners = (body: Body): readonly Vec3[] => {
  const { positions } = meshOf(body);
  return Array.from({ length: positions.length / 3 }, (_, i) => [
    positions[3 * i]!,
    positions[3 * i + 1]!,
    positions[3 * i + 2]!,
  ]);
};
/** The mesh is written in single precision: at a metre its last bit is 6e-5 mm. */
const SINGLE = 2e-4;
/** The corners in a plane, without those the kernel left on a straight edge between two others. */
const onPlane = (body: Body, plane: Plane): readonly Vec3[] => {
  const all = corners(body).filter((p) => Math.abs(heightOver(plane, p)) < SINGLE);
  const apart = all.filter((p, i) => all.findIndex((q) => far(p, q) < 0.01) === i);
  return apart.filter(
    (p) =>
      !apart.some(
        (a) => a !== p && apart.some((b) => b !== p && b !== a && far(a, p) + far(p, b) - far(a, b) < 1e-3),
      ),
  );
};
const far = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const determinant = (f: Frame): number => dot(cross(f.x, f.y), f.z);

const legOf = (rakeDeg: number, splayDeg: number, size = 40): PlacedBoard => {
  const { outPerRise } = leaning({ rakeDeg, splayDeg });
  return legBetween({
    id: 'leg',
    above: [150, 100, 450],
    below: [150 + 450 * outPerRise[0], 100 + 450 * outPerRise[1], 0],
    width: size,
    thickness: size,
  });
};

/**
 * Square stock with the front face along the splay axis on the saw table: mitre atan(tan b · cos a), blade tilted by a; the line on the
 * face beside it atan(sin a / cos R). Derived in public write-ups (blackdogswoodshop.blogspot.com 2020/02; tinyshopww.blogspot.com
 * 2020/05), worked out again by hand.
 */
describe.each([
  { rake: 5, splay: 5, front: 4.9811, adjacent: 5.0189, length: 453.431 },
  { rake: 10, splay: 10, front: 9.8511, adjacent: 10.1466, length: 463.78 },
  { rake: 8, splay: 12, front: 11.8866, adjacent: 8.173, length: 464.38 },
  { rake: 10, splay: 15, front: 14.7822, adjacent: 10.335, length: 472.583 },
  { rake: 15, splay: 22, front: 21.3187, adjacent: 16.0469, length: 500.094 },
])('a leg of rake $rake° and splay $splay° between two points', (row) => {
  const leg = legOf(row.rake, row.splay);

  test('is sawn at the published mitre and bevel', () => {
    expect(leg.board.bevels.map(({ id }) => id)).toEqual(['foot', 'head']);
    for (const { normal } of leg.board.bevels) {
      const { mitreDeg, bevelDeg } = sawAngles(normal);
      expect(Math.abs(mitreDeg - row.front)).toBeLessThan(5.1e-5);
      expect(bevelDeg).toBeCloseTo(row.rake, 9);
      const adjacent = (Math.atan(Math.abs(normal[2] / normal[0])) * 180) / Math.PI;
      expect(Math.abs(adjacent - row.adjacent)).toBeLessThan(5.1e-5);
    }
  });

  test('stands level at head and foot, and is as large as its section times its length', async () => {
    await onSolids(asDesign([leg]), ({ boards }) => {
      const { body } = boards.get('leg')!;
      expect(onPlane(body, levelAt(0))).toHaveLength(4);
      expect(onPlane(body, levelAt(450))).toHaveLength(4);
      expect(box(body).min[2]).toBeCloseTo(0, 9);
      expect(box(body).max[2]).toBeCloseTo(450, 9);
      // parallel ends: a prism sheared, so the section times the length between their middles
      expect(Math.abs(volume(body) / 1600 - row.length)).toBeLessThan(5.1e-4);
      const { outPerRise } = leaning({ rakeDeg: row.rake, splayDeg: row.splay });
      for (const height of [0, 450]) {
        const middle = onPlane(body, levelAt(height)).reduce((sum, p) => add(sum, scale(p, 1 / 4)), [
          0, 0, 0,
        ] as Vec3);
        const out = outPerRise.map((each) => each * (450 - height));
        expect(far(middle, [150 + out[0]!, 100 + out[1]!, height])).toBeLessThan(SINGLE);
      }
      // the blank is no longer than its long points: a corner lies in each of its end planes
      const { length } = leg.board.blank;
      for (const x of [0, length]) {
        const end = { point: pointOut(leg.place, [x, 0, 0]), normal: leg.place.x };
        expect(onPlane(body, end)).toHaveLength(1);
      }
    });
  });

  test('gives a rail cut to its face an end that lies wholly on that face', async () => {
    const other = mirrored(leg, { point: [0, 0, 0], normal: [1, 0, 0] }, 'other');
    const uncut: PlacedBoard = {
      board: makeBoard({ id: 'rail', blank: { length: 300, width: 60, thickness: 20 } }),
      place: frame([-150, 140, 200], [0, -1, 0], [1, 0, 0]),
    };
    // y runs to the right on the leg, so the face towards the middle is its reference edge
    const rail = trimmedTo(trimmedTo(uncut, leg, 'reference-edge', 'right'), other, 'opposite-edge', 'left');
    await onSolids(asDesign([leg, other, rail]), ({ boards }) => {
      const body = boards.get('rail')!.body;
      for (const [id, face] of [
        ['leg', 'reference-edge'],
        ['other', 'opposite-edge'],
      ] as const) {
        const plane = planeOf(boards.get(id)!, face);
        expect(onPlane(body, plane)).toHaveLength(4);
        expect(Math.min(...corners(body).map((p) => heightOver(plane, p)))).toBeGreaterThan(-SINGLE);
        expect(sharedVolume(body, boards.get(id)!.body)).toBeLessThan(0.01);
      }
      // it turned the two small angles of a square leg that leans two ways, not the elevation's
      const angles = rail.board.bevels.map(({ normal }) => sawAngles(normal));
      expect(angles[0]!.bevelDeg).toBeGreaterThan(0);
      expect(angles[0]!.bevelDeg).toBeCloseTo(angles[1]!.bevelDeg, 9);
      expect(rail.board.blank.length).toBeCloseTo(2 * Math.max(...corners(body).map(([x]) => x)), 3);
    });
  });
});

test('an upright leg has square ends and no bevel', () => {
  const leg = legBetween({ id: 'leg', above: [0, 0, 450], below: [0, 0, 0], width: 50, thickness: 40 });
  expect(leg.board.bevels).toEqual([]);
  expect(leg.board.blank).toEqual({ length: 450, width: 50, thickness: 40 });
  expect(pointOut(leg.place, [0, 25, 20])).toEqual([0, 0, 0]);
});

test('a cut square to the faces is sawn in the outline', () => {
  const rail: PlacedBoard = {
    board: makeBoard({ id: 'rail', blank: { length: 400, width: 60, thickness: 20 } }),
    place: WORLD,
  };
  const cut = trimmed(rail, { point: [300, 0, 0], normal: [Math.cos(0.2), Math.sin(0.2), 0] }, 'end');
  expect(cut.board.bevels).toEqual([]);
  expect(cut.board.blank.length).toBe(300);
  expect(Math.min(...cut.board.outline.filter(({ y }) => y === 60).map(({ x }) => x || 300))).toBeCloseTo(
    300 - 60 * Math.tan(0.2),
    9,
  );
});

test('a board trimmed at its reference end carries its holes, slots and openings with it', async () => {
  const board = makeBoard({
    id: 'rail',
    blank: { length: 400, width: 80, thickness: 30 },
    openings: [{ id: 'window', outline: circle({ diameter: 20, centre: [200, 40] }) }],
    holes: [
      {
        id: 'h',
        face: 'opposite-face',
        at: frame([250, 30, 30], [0, 0, 1], [1, 0, 0]),
        diameter: 8,
        depth: 12,
      },
    ],
    slots: [
      {
        id: 's',
        face: 'opposite-face',
        at: frame([320, 40, 30], [0, 0, 1], [1, 0, 0]),
        width: 10,
        length: 40,
        depth: 9,
      },
    ],
  });
  const placed: PlacedBoard = { board, place: frame([5, 6, 7], [0, 0, 1], [0.6, 0.8, 0]) };
  const cut = trimmed(
    placed,
    { point: pointOut(placed.place, [50, 0, 0]), normal: scale(placed.place.x, -1) },
    'e',
  );
  expect(cut.board.blank.length).toBeCloseTo(350, 9);
  await onSolids(asDesign([placed, { ...cut, board: { ...cut.board, id: 'cut' } }]), ({ boards }) => {
    const [before, after] = [boards.get('rail')!, boards.get('cut')!];
    expect(volume(after.body)).toBeCloseTo(volume(before.body) - 50 * 80 * 30, 3);
    expect(sharedVolume(before.body, after.body)).toBeCloseTo(volume(after.body), 2);
  });
});

test.each([
  ['along the grain', { point: [0, 30, 0], normal: [0, 1, 0] }, /along the grain/],
  ['beyond the other end', { point: [-20, 0, 0], normal: [1, 0, 0] }, /whole board/],
] as const)('a cut %s is refused with the reason', (_, plane, reason) => {
  const rail: PlacedBoard = {
    board: makeBoard({ id: 'rail', blank: { length: 400, width: 60, thickness: 20 } }),
    place: WORLD,
  };
  expect(() => trimmed(rail, plane, 'end')).toThrow(reason);
  expect(() => trimmed(rail, plane, 'end')).toThrow(BoardError);
});

test('a tapered edge would change with its end, so the board is trimmed before it is tapered', () => {
  const outline = polygon([
    { x: 0, y: 0 },
    { x: 400, y: 10 },
    { x: 400, y: 50 },
    { x: 0, y: 60 },
  ]);
  const board = makeBoard({ id: 'leg', blank: { length: 400, width: 60, thickness: 20 }, outline });
  expect(() => trimmed({ board, place: WORLD }, { point: [350, 0, 0], normal: [1, 0, 0] }, 'end')).toThrow(
    /before shaping/,
  );
});

test('a bevel may run past the root of an arch', () => {
  const outline = polygon([
    { x: 0, y: 0 },
    { x: 400, y: 0 },
    { x: 400, y: 90 },
    { x: 0, y: 90 },
    { x: 0, y: 60 },
    { x: 20, y: 60, radius: 14 },
    { x: 20, y: 30, radius: 14 },
    { x: 0, y: 30 },
  ]);
  const board = makeBoard({ id: 'side', blank: { length: 400, width: 90, thickness: 28 }, outline });
  const floor = { point: [0, 0, 0], normal: [-Math.cos(0.3), 0, Math.sin(0.3)] } as const;
  const foot = trimmed({ board, place: WORLD }, { ...floor, normal: scale(floor.normal, 1) }, 'foot');
  expect(foot.board.bevels).toHaveLength(1);
});

const plainHanded = makeBoard({
  id: 'left-side',
  blank: { length: 300, width: 120, thickness: 24 },
  outline: polygon([
    { x: 0, y: 0 },
    { x: 300, y: 20 },
    { x: 300, y: 90, radius: 15 },
    { x: 160, y: 120 },
    { x: 0, y: 120 },
  ]),
  bevels: [
    {
      id: 'top',
      point: [300, 0, 24],
      normal: [Math.cos(0.3), 0, -Math.sin(0.3)],
      within: polygon([
        { x: 200, y: -1 },
        { x: 301, y: -1 },
        { x: 301, y: 50 },
        { x: 200, y: 50 },
      ]),
    },
  ],
  openings: [{ id: 'hand', outline: obround({ length: 60, width: 25, centre: [150, 80] }) }],
  holes: [
    { id: 'h', face: 'opposite-face', at: frame([60, 30, 24], [0, 0, 1], [0, 1, 0]), diameter: 8, depth: 12 },
    {
      id: 'e',
      face: 'opposite-edge',
      at: frame([90, 120, 10], [0, 1, 0], [1, 0, 0]),
      diameter: 6,
      depth: 30,
    },
  ],
  slots: [
    {
      id: 's',
      face: 'opposite-face',
      at: frame([40, 90, 24], [0, 0, 1], [0.6, 0.8, 0]),
      width: 10,
      length: 60,
      depth: 8,
      openAt: 'start',
    },
  ],
});

const handed = [
  {
    id: 'g',
    face: 'opposite-face',
    from: 'edge-1',
    distance: 12,
    width: 6,
    depth: 5,
    stop: { start: 70 },
  },
  { id: 'rebate', face: 'reference-face', from: 'opposite-edge', distance: 0, width: 9, depth: 4 },
].reduce(withGroove, plainHanded);

test('for all places and planes a mirrored board fills the mirror image, in a right-handed frame', async () => {
  const part = fc.double({ min: -400, max: 400, noNaN: true });
  const direction = fc
    .tuple(part, part, part)
    .filter((d) => Math.hypot(...d) > 50)
    .map((d): Vec3 => scale(d, 1 / Math.hypot(...d)));
  await fc.assert(
    fc.asyncProperty(
      fc.tuple(part, part, part),
      direction,
      direction,
      direction,
      async (at, z, x, normal) => {
        fc.pre(Math.abs(dot(z, x)) < 0.9);
        const placed = { board: handed, place: frame(at, z, x) };
        const plane = { point: [10, 20, 30] as Vec3, normal };
        const image = mirrored(placed, plane, 'right-side');
        expect(determinant(image.place)).toBeCloseTo(1, 9);
        await onSolids(asDesign([placed, image]), ({ boards }) => {
          // the kernel's own mirror of the first body
          const mirror = boards
            .get('left-side')!
            .body.translate(scale(plane.point, -1) as [number, number, number])
            .mirror([...normal])
            .translate([...plane.point]);
          const body = boards.get('right-side')!.body;
          expect(volume(body)).toBeCloseTo(volume(mirror), 1);
          expect(sharedVolume(body, mirror) / volume(mirror)).toBeGreaterThan(1 - 1e-6);
          mirror.delete();
        });
      },
    ),
    seed(8),
  );
});

test('a mirrored board names its faces as they lie: a hole in the one edge is in the other', () => {
  const image = mirrored({ board: handed, place: WORLD }, levelAt(0), 'right-side').board;
  expect(image.name).toBe('right side');
  expect(image.holes.map(({ face }) => face)).toEqual(['opposite-face', 'reference-edge']);
  expect(image.slots[0]!.face).toBe('opposite-face');
});

test('copies along a line stand a step apart, and copies round a line share the turn', async () => {
  const slat: PlacedBoard = {
    board: makeBoard({ id: 'slat', blank: { length: 300, width: 40, thickness: 12 } }),
    place: frame([0, 0, 50], [0, -1, 0], [0, 0, 1]),
  };
  const row = repeatedAlong(slat, 4, [60, 5, 0]);
  expect(row.map(({ board }) => board.id)).toEqual(['slat-1', 'slat-2', 'slat-3', 'slat-4']);
  expect(row.map(({ place }) => place.origin)).toEqual([
    [0, 0, 50],
    [60, 5, 50],
    [120, 10, 50],
    [180, 15, 50],
  ]);
  const legs = repeatedRound(legOf(8, 12), 3, [10, 20, 0]);
  await onSolids(asDesign(legs), ({ boards }) => {
    const feet = [...boards.values()].map(({ body }) => onPlane(body, levelAt(0)));
    expect(feet.map((foot) => foot.length)).toEqual([4, 4, 4]);
    const middles = feet.map((foot) => foot.reduce((sum, p) => add(sum, scale(p, 1 / 4)), [0, 0, 0] as Vec3));
    const out = middles.map(([x, y]) => Math.hypot(x - 10, y - 20));
    expect(out[1]).toBeCloseTo(out[0]!, 3);
    expect(out[2]).toBeCloseTo(out[0]!, 3);
    // a triangle with equal sides: R·√3
    for (const [a, b] of [
      [0, 1],
      [1, 2],
      [2, 0],
    ] as const)
      expect(Math.hypot(middles[a]![0] - middles[b]![0], middles[a]![1] - middles[b]![1])).toBeCloseTo(
        out[0]! * Math.sqrt(3),
        3,
      );
  });
});

test('a board with mortises is neither mirrored nor repeated, nor any board half a time', () => {
  const board = { ...handed, mortises: [{}] } as unknown as typeof handed;
  expect(() => mirrored({ board, place: WORLD }, levelAt(0), 'x')).toThrow(/before they are joined/);
  expect(() => repeatedAlong({ board, place: WORLD }, 2, [1, 0, 0])).toThrow(/before they are joined/);
  expect(() => repeatedRound({ board: handed, place: WORLD }, 1.5)).toThrow(/whole number/);
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import stoolModel from '../../models/stool.js';
import { assemble, type Design } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { assemblyPath } from '../../src/checks/shop/assembly-path.js';
import { add, frame, scale, unit, type Vec3, WORLD } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { polygon } from '../../src/profile/index.js';
import {
  bestMove,
  entriesOf,
  type GlueStep,
  type GlueUp,
  glueUp,
  pathBlocks,
  provedGlueUp,
} from '../../src/shop/index.js';
import {
  type Body,
  type Box,
  box,
  type Kernel,
  type Solids,
  sharedVolume,
  solidsOf,
  startKernel,
} from '../../src/solid/index.js';
import { many } from '../properties/seed.js';
import { armchair } from '../shop/armchair.js';
import { splayedBase } from '../shop/splayed-base.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const built = (model: Model, raw: Readonly<Record<string, string | number>> = {}) =>
  model.build(readParameters(model, raw, 'mm'));

const findings = (design: Design) =>
  assemblyPath({ solids: solidsOf(kernel, design), tenons: [], say: speaker('mm') });

/** All bodies of a group: its boards and the tenons glued into them. */
function bodies(
  solids: Solids,
  up: GlueUp,
  boards: readonly string[],
): readonly { id: string; body: Body }[] {
  const tenons = up.seatings
    .filter(({ board }) => boards.includes(board))
    .flatMap((seating) => seating.tenons);
  return [
    ...boards.map((id) => ({ id, body: solids.boards.get(id)!.body })),
    ...tenons.map((id) => ({ id, body: solids.tenons.get(id)!.body })),
  ];
}

const boxesMeet = (a: Box, b: Box) => [0, 1, 2].every((i) => a.max[i]! > b.min[i]! && b.max[i]! > a.min[i]!);

const moved = ({ min, max }: Box, by: Vec3): Box => ({ min: add(min, by), max: add(max, by) });

/** The most any two pieces share while a step is made in small strides. */
function worstShare(solids: Solids, up: GlueUp, step: GlueStep, stride: number): number {
  const count = Math.ceil(step.travel / stride);
  const ways = Array.from({ length: count + 1 }, (_, i) =>
    scale(step.direction, -step.travel * (1 - i / count)),
  );
  const still = bodies(solids, up, step.still).map(({ body }) => ({ body, room: box(body) }));
  let worst = 0;
  for (const { body } of bodies(solids, up, step.moving)) {
    const room = box(body);
    for (const other of still) {
      const near = ways.filter((by) => boxesMeet(moved(room, by), other.room));
      if (near.length === 0) continue;
      // of either piece only what can come into the other's box: most of a board is far from a tenon's way
      const mine = within(
        body,
        near.map((by) => moved(other.room, scale(by, -1))),
      );
      const its = within(
        other.body,
        near.map((by) => moved(room, by)),
      );
      for (const by of near) {
        const posed = mine.translate([...by]);
        worst = Math.max(worst, sharedVolume(posed, its));
        posed.delete();
      }
      mine.delete();
      its.delete();
    }
  }
  return worst;
}

/** What of a body lies in the box round several, with 1 mm to spare. The caller owns it. */
function within(body: Body, rooms: readonly Box[]): Body {
  const min = [0, 1, 2].map((i) => Math.min(...rooms.map((room) => room.min[i]!)) - 1);
  const max = [0, 1, 2].map((i) => Math.max(...rooms.map((room) => room.max[i]!)) + 1);
  const cube = kernel.wasm.Manifold.cube(max.map((end, i) => end - min[i]!) as [number, number, number]);
  const round = cube.translate(min as [number, number, number]);
  const inside = body.intersect(round);
  cube.delete();
  round.delete();
  return inside;
}

const PUT_TOGETHER = [
  [
    'stool with two treads, its stretcher mortised along the grain',
    stoolModel,
    { treads: 2, 'stretcher-axis': 'along-stretcher' },
  ],
  ['frame', frameModel, {}],
  // boards of the first
  ['stool', stoolModel, {}],
] as const;

test.each(PUT_TOGETHER.slice(0, many(2, 3)))(
  'nothing of a %s meets while it is put together in strides of half a cheek clearance',
  (_, model, raw) => {
    const design = built(model, raw);
    const solids = solidsOf(kernel, design);
    const { glueUp: up, inTheWay } = provedGlueUp(solids);
    expect(inTheWay).toEqual([]);
    const stride = Math.min(...design.joints.map(({ fit }) => fit.cheek)) / 2;
    for (const step of up.steps) expect(worstShare(solids, up, step, stride)).toBeLessThan(0.01);
    expect(findings(design)).toEqual([]);
  },
);

test('an armchair of 18 boards goes together on the solids, its frames last in strides of a millimetre', () => {
  const design = armchair();
  const solids = solidsOf(kernel, design);
  const { glueUp: up, inTheWay } = provedGlueUp(solids);
  expect(up.conflicts).toEqual([]);
  expect(inTheWay).toEqual([]);
  expect(up.steps).toHaveLength(design.boards.length - 1);
  for (const step of up.steps.slice(-3)) expect(worstShare(solids, up, step, 1)).toBeLessThan(0.01);
  expect(findings(design)).toEqual([]);
});

test('a step made in another direction is blocked by its own tenons', () => {
  const design = built(stoolModel);
  const solids = solidsOf(kernel, design);
  const up = glueUp(design);
  const last = up.steps.at(-1)!;
  expect(pathBlocks(solids, up, last)).toEqual([]);
  // 1° off over a tenon of 13 mm is 0.23 mm, more than a cheek of 0.1
  const aslant = { ...last, direction: unit([Math.sin(Math.PI / 180), 0, -Math.cos(Math.PI / 180)]) as Vec3 };
  const tenons = pathBlocks(solids, up, aslant).map(({ pieces }) => pieces[1]);
  expect(new Set(tenons)).toEqual(
    new Set(['tread/left-side/1', 'tread/left-side/2', 'tread/right-side/1', 'tread/right-side/2']),
  );
  // 0.4° is 0.09 mm: inside the clearance
  const tilt = (0.4 * Math.PI) / 180;
  const nearly = { ...last, direction: unit([Math.sin(tilt), 0, -Math.cos(tilt)]) as Vec3 };
  expect(pathBlocks(solids, up, nearly)).toEqual([]);
});

/** The move that closes both skewed rails of a leaning base at once. */
function skewedStep(degrees: number): { solids: Solids; up: GlueUp; step: GlueStep } {
  const design = splayedBase({ rakeDeg: degrees, splayDeg: degrees, rails: true, into: 25, cheek: 0.075 });
  const moving = ['leg-11', 'leg-12', 'y-rail-1'];
  const still = ['leg-21', 'leg-22', 'y-rail-2', 'x-rail-1', 'x-rail-2'];
  const crossing = entriesOf(design).filter(
    ({ owner, receiver }) => moving.includes(owner) !== moving.includes(receiver),
  );
  const move = bestMove(new Set(moving), new Set(still), crossing)!;
  const step: GlueStep = {
    id: 'G1',
    moving,
    still,
    direction: move.direction,
    travel: move.distance,
    joints: move.entries,
    freedom: move.freedom,
    shift: 0,
    forceN: 0,
    panels: [],
    stage: 1,
  };
  return { solids: solidsOf(kernel, design), up: glueUp(design), step };
}

test('skewed rails go in free at 3°, at 4° only when they are sprung as said, on the solids', () => {
  const unsprung = (step: GlueStep): GlueStep => ({
    ...step,
    joints: step.joints.map((one) => ({ ...one, freedom: 'free' })),
  });
  const three = skewedStep(3);
  expect(pathBlocks(three.solids, three.up, three.step)).toEqual([]);
  for (const degrees of [4, 8]) {
    const { solids, up, step } = skewedStep(degrees);
    expect(step.freedom).toBe('sprung');
    expect(pathBlocks(solids, up, step)).toEqual([]);
    expect(pathBlocks(solids, up, unsprung(step)).map(({ pieces }) => pieces[1])).toEqual([
      'x-rail-1/leg-11/1',
      'x-rail-2/leg-12/1',
    ]);
  }
});

/** A base board with a post, a shelf that enters the post from the right, and a fence that stands close before the shelf. */
function fenced(gap: number): Design {
  const board = (id: string, blank: { length: number; width: number; thickness: number }) =>
    makeBoard({ id, blank });
  return assemble({
    name: 'fenced',
    title: 'Fenced',
    cutter: 6,
    boards: [
      {
        board: board('base', { length: 400, width: 80, thickness: 30 }),
        place: frame([0, 0, 0], [0, 0, 1], [1, 0, 0]),
      },
      // upright boards: grain up, thickness along x
      {
        board: board('post', { length: 200, width: 80, thickness: 30 }),
        place: frame([0, 80, 30], [1, 0, 0], [0, 0, 1]),
      },
      {
        board: board('shelf', { length: 100, width: 80, thickness: 24 }),
        place: frame([30, 0, 120], [0, 0, 1], [1, 0, 0]),
      },
      {
        board: board('fence', { length: 200, width: 80, thickness: 30 }),
        place: frame([130 + gap, 80, 30], [1, 0, 0], [0, 0, 1]),
      },
    ],
    joints: [
      { a: 'base', b: 'post' },
      { a: 'shelf', b: 'post' },
      { a: 'base', b: 'fence' },
    ],
  });
}

test('a shelf that has no room behind a fence goes in before it', () => {
  const design = fenced(5);
  const solids = solidsOf(kernel, design);
  const { glueUp: up } = provedGlueUp(solids);
  expect(up.conflicts).toEqual([]);
  const step = up.steps.find(({ joints }) => joints.some(({ joint }) => joint === 'shelf/post'))!;
  expect([...step.moving, ...step.still]).not.toContain('fence');
  for (const one of up.steps) expect(worstShare(solids, up, one, 0.05)).toBeLessThan(0.01);
  // moved against it, the two are found to meet where the gap ends
  const whole: GlueStep = {
    ...step,
    moving: ['shelf'],
    still: ['base', 'post', 'fence'],
    direction: [-1, 0, 0],
  };
  const [met] = pathBlocks(solids, up, whole).filter(({ pieces }) => pieces[1] === 'fence');
  expect(met!.pieces).toEqual(['shelf', 'fence']);
});

test('a shelf that would have to pass through an arm of its clasp is an error that names what meets', () => {
  const clasp = makeBoard({
    id: 'clasp',
    blank: { length: 200, width: 120, thickness: 30 },
    outline: polygon([
      { x: 0, y: 0 },
      { x: 200, y: 0 },
      { x: 200, y: 120 },
      { x: 170, y: 120 },
      { x: 170, y: 30 },
      { x: 30, y: 30 },
      { x: 30, y: 120 },
      { x: 0, y: 120 },
    ]),
  });
  const shelf = makeBoard({ id: 'shelf', blank: { length: 135, width: 40, thickness: 30 } });
  const found = findings(
    assemble({
      name: 'clasped',
      title: 'Clasped',
      cutter: 8,
      boards: [
        { board: clasp, place: WORLD },
        { board: shelf, place: { ...WORLD, origin: [30, 60, 0] } },
      ],
      joints: [{ a: 'shelf', b: 'clasp', options: { endInset: 8 } }],
    }),
  );
  expect(found.map(({ code, level }) => [code, level])).toEqual([['no-glue-up-order', 'error']]);
  expect(found[0]!.subjects).toEqual(['shelf/clasp', 'clasp', 'shelf']);
  expect(found[0]!.message).toContain('on the way clasp and shelf meet');
});

test('a base with rails and a top mortised along its legs is an error', () => {
  const found = findings(
    splayedBase({ rakeDeg: 8, splayDeg: 8, rails: true, topAxis: 'along b', into: 25, cheek: 0.075 }),
  );
  expect(found.map(({ code }) => code)).toEqual(['no-glue-up-order']);
  expect(found[0]!.measured).toBeGreaterThan(1);
});

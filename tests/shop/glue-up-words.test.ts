import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import stoolModel from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { add, angleDeg, cross, dot, scale, subtract, unit, type Vec3 } from '../../src/frame/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import {
  type BlockTable,
  builtInShop,
  clampPlan,
  diagonalsOf,
  glueMass,
  glueUp,
  glueUpPaper,
  moveWords,
  provedGlueUp,
} from '../../src/shop/index.js';
import {
  type Body,
  box,
  gap,
  type Kernel,
  type Solids,
  sharedVolume,
  solidsOf,
  startKernel,
} from '../../src/solid/index.js';
import { armchair } from './armchair.js';
import { splayedBase } from './splayed-base.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const built = (model: Model, raw: Readonly<Record<string, string | number>> = {}) =>
  model.build(readParameters(model, raw, 'mm'));

/** The person stands in front and looks along y with the head up: the right hand is at look × up. */
const LOOK: Vec3 = [0, 1, 0];
const UP: Vec3 = [0, 0, 1];
const RIGHT = cross(LOOK, UP);
const HANDS: readonly (readonly [RegExp, Vec3])[] = [
  [/^to the right$/, RIGHT],
  [/^to the left$/, scale(RIGHT, -1)],
  [/^away from you$/, LOOK],
  [/^towards you$/, scale(LOOK, -1)],
  [/^up$/, UP],
  [/^down$/, scale(UP, -1)],
];
const hand = (words: string): Vec3 => HANDS.find(([said]) => said.test(words))![1];

/** The way a reader goes who is told `to the right, 10.0° down and 2.0° towards you`. */
function asRead(words: string): Vec3 {
  if (words.startsWith('straight ')) return hand(words.slice('straight '.length));
  const [main, leans] = words.split(', ');
  return unit(
    leans!.split(' and ').reduce((way, lean) => {
      const [, degrees, to] = /^([\d.]+)° (.+)$/.exec(lean)!;
      return add(way, scale(hand(to!), Math.tan((Number(degrees) * Math.PI) / 180)));
    }, hand(main!)),
  );
}

test.each([
  [[0, 0, -1], 'straight down'],
  [[-1, 0, 0], 'straight to the left'],
  [[0, -1, 0], 'straight towards you'],
  [unit([Math.cos(Math.PI / 18), 0, -Math.sin(Math.PI / 18)]), /^to the right, 10(\.0)?° down$/],
] as const)('a move along %j is told as %s', (direction, words) => {
  if (typeof words === 'string') expect(moveWords(direction)).toBe(words);
  else expect(moveWords(direction)).toMatch(words);
});

test('whoever goes where any words lead goes the way of the move, to a tenth of a degree and what is not told', () => {
  const sides = [-1, -0.4, -0.1, 0, 0.05, 0.3, 1];
  for (const x of sides)
    for (const y of sides)
      for (const z of sides) {
        if (x === 0 && y === 0 && z === 0) continue;
        const direction = unit([x, y, z]);
        expect(angleDeg(asRead(moveWords(direction)), direction)).toBeLessThan(0.1);
      }
});

/** The rows of a glue-up as a person reads them. */
function read(solids: Solids) {
  const { design } = solids;
  const { glueUp } = provedGlueUp(solids);
  const shop = builtInShop('mm');
  const blocks = glueUpPaper({
    design,
    tenons: [],
    glueUp,
    shop,
    clamps: clampPlan(design, glueUp, shop.clamps),
    diagonals: diagonalsOf(design, glueUp),
    glue: glueMass(design),
    revision: '0badf00d',
  });
  const tables = blocks.filter((block): block is BlockTable => block.kind === 'table');
  const cells = (head: string) =>
    tables
      .filter((table) => table.head[0] === head)
      .flatMap(({ rows }) => rows.map((row) => row.map(String)));
  const idOf = (name: string) => design.boards.find(({ board }) => board.name === name)!.board.id;
  const into = new Map(
    cells('joint')
      .filter((row) => row.length === 4)
      .map(([joint, , board]) => [joint!, idOf(board!)]),
  );
  const bodies = (names: string) => {
    const ids = names.split(/, | and /).map(idOf);
    const tenons = design.joints
      .filter(({ id }) => ids.includes(into.get(id)!))
      .flatMap((joint) => joint.tenons.map(({ id }) => solids.tenons.get(id)!.body));
    return [...ids.map((id) => solids.boards.get(id)!.body), ...tenons];
  };
  return cells('step').map(([step, bring, to, way, stretch]) => ({
    step: step!,
    moving: bodies(bring!),
    still: bodies(to!),
    way: asRead(way!),
    stretch: Number.parseFloat(stretch!),
  }));
}

/** Two bodies, the first shifted, for every two that come near each other when a group is shifted towards another. */
function met<T>(
  moving: readonly Body[],
  still: readonly Body[],
  by: Vec3,
  look: (one: Body, other: Body) => T,
): readonly T[] {
  const seen: T[] = [];
  for (const one of moving) {
    const there = one.translate([...by]);
    const near = still.filter((other) => {
      const [a, b] = [box(there), box(other)];
      return [0, 1, 2].every((i) => a.max[i]! > b.min[i]! - 1 && b.max[i]! > a.min[i]! - 1);
    });
    seen.push(...near.map((other) => look(there, other)));
    there.delete();
  }
  return seen;
}

const fitted: readonly (readonly [string, () => Design])[] = [
  ['stool', () => built(stoolModel)],
  ['stool with two treads', () => built(stoolModel, { treads: 2 })],
  ['frame', () => built(frameModel)],
  [
    'base that leans both ways',
    () => splayedBase({ rakeDeg: 8, splayDeg: 5, rails: true, into: 25, cheek: 0.075 }),
  ],
  ['armchair', armchair],
];

describe.each(fitted)('the steps of a %s, done as the paper words them', (_, make) => {
  test('open a gap the other way, slide home without touching wood, and can go no farther', () => {
    const solids = solidsOf(kernel, make());
    const rows = read(solids);
    expect(rows.length).toBe(solids.design.boards.length - 1);
    for (const { step, moving, still, way, stretch } of rows) {
      const looked = <T>(mm: number, look: (one: Body, other: Body) => T) =>
        met(moving, still, scale(way, mm), look);
      /** What both share, mm³. */
      const shared = (mm: number) => looked(mm, sharedVolume).reduce((sum, one) => sum + one, 0);
      // drawn back by the last stretch every tenon is out of its mortise, with air before it
      expect(shared(-stretch), step).toBeLessThan(0.01);
      for (const apart of looked(-stretch, (one, other) => gap(one, other, 1)))
        expect(apart, step).toBeGreaterThan(1 - 1e-6);
      for (const share of [0.75, 0.5, 0.25, 0.05]) expect(shared(-share * stretch), step).toBeLessThan(0.01);
      // home, the shoulders touch: a millimetre on, or coming from the other side, wood meets wood
      expect(shared(0), step).toBeLessThan(0.01);
      expect(shared(1), step).toBeGreaterThan(10);
      expect(shared(stretch / 2), step).toBeGreaterThan(100);
    }
  });
});

test('clamps stand as far apart as told, and the thick end of every wedge under a jaw fills the side where the face falls back from the jaw', () => {
  const said = new Set<string>();
  const leaning = new Set<boolean>();
  for (const design of [
    built(stoolModel),
    built(stoolModel, { treads: 2 }),
    splayedBase({ rakeDeg: 8, splayDeg: 5, rails: true, into: 25, cheek: 0.075 }),
  ]) {
    const up = glueUp(design);
    const clamps = clampPlan(design, up);
    const paper = glueUpPaper({
      design,
      glueUp: up,
      clamps,
      tenons: [],
      diagonals: diagonalsOf(design, up),
      glue: glueMass(design),
      shop: builtInShop('mm'),
      revision: '0',
    });
    const rows = paper.flatMap((block) =>
      block.kind === 'table' && block.head[0] === 'clamp' ? block.rows : [],
    );
    for (const clamp of clamps.clamps) {
      // two of one joint stand as far apart as the places their jaws bear on, seen along the clamps
      const twin = clamps.clamps.find(
        (one) => one.id !== clamp.id && one.stage === clamp.stage && `${one.joints}` === `${clamp.joints}`,
      );
      const place = paper
        .flatMap((block) => (block.kind === 'list' ? block.items : []))
        .map(String)
        .find((item) => new RegExp(`^[^:]*\\b${clamp.id}\\b[^:]*: .*middle of the joint`).test(item))!;
      const apart = /: ([\d.]+) mm/.exec(place)?.[1];
      const bears = ({ ends: [end] }: typeof clamp) => end.at;
      const [near, far] = [bears(clamp), twin && bears(twin)];
      expect(apart === undefined).toBe(twin === undefined);
      if (far) {
        const ways = cross(subtract(far, near), clamp.direction);
        expect(Number(apart)).toBeCloseTo(Math.sqrt(dot(ways, ways)), 1);
      }
      expect(rows.find(([ids]) => String(ids).split(', ').includes(clamp.id))![2]).toBe(
        design.boards.find(({ board }) => board.id === clamp.rail)!.board.name,
      );
      // whoever holds the bar as told holds it along the line between its jaws, and along a main direction where nothing is told
      const told = paper
        .flatMap((block) => (block.kind === 'list' ? block.items : []))
        .map(String)
        .find((item) => new RegExp(`^[^:]*\\b${clamp.id}\\b[^:]*: the bars? lean`).test(item));
      const bar = unit(subtract(clamp.ends[1].at, clamp.ends[0].at));
      const lies = told ? [asRead(/ runs? (.+)\.$/.exec(told)![1]!)] : [RIGHT, LOOK, UP];
      const off = lies.map((way) => angleDeg(way, bar)).map((degrees) => Math.min(degrees, 180 - degrees));
      expect(Math.min(...off)).toBeLessThan(0.4);
      leaning.add(told === undefined);
      const pads = String(rows.find(([ids]) => String(ids).split(', ').includes(clamp.id))![6]).split(
        /, (?=clamp-pad)/,
      );
      clamp.ends.forEach((end, i) => {
        const words = /, thick end (.+)$/.exec(pads[i]!)?.[1];
        expect(words === undefined).toBe(end.pad.angleDeg === 0);
        if (words === undefined) return;
        said.add(words);
        const outwards = unit(subtract(end.at, clamp.ends[1 - i]!.at));
        // one step the told way, kept on the face, is farther from a jaw square to the clamp
        const way = hand(words);
        const step = subtract(way, scale(end.normal, dot(way, end.normal)));
        expect(dot(step, outwards)).toBeLessThan(-0.001);
      });
    }
  }
  expect(said.size).toBeGreaterThan(2);
  expect(leaning.size).toBe(2);
});

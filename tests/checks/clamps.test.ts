import { afterAll, beforeAll, expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import jigModel from '../../models/jig.js';
import stoolModel from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { benchInShop, benchOf } from '../../src/checks/index.js';
import { clampsAtHand } from '../../src/checks/shop/clamps.js';
import { add, cross, scale, unit, type Vec3 } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { builtInShop, type Clamp, clampPlan, clampsChosen, glueUp, type Shop } from '../../src/shop/index.js';
import { type Box, box, hit, type Kernel, solidsOf, startKernel } from '../../src/solid/index.js';
import { armchair } from '../shop/armchair.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const built = (model: Model, raw: Readonly<Record<string, string | number>> = {}) =>
  model.build(readParameters(model, raw, 'mm'));
const jig = () => built(jigModel);
const frame = () => built(frameModel);

type Clamps = Shop['clamps'];

const found = (design: Design, clamps: Clamps) => {
  const shop = { ...builtInShop('mm'), clamps };
  return clampsAtHand(benchInShop(benchOf(solidsOf(kernel, design), speaker('mm')), shop, jig()));
};

/** The clamps a remedy asks for, as a reader writes them into the shop file. */
function asked(remedy: string): Clamps[number] {
  const [, count, opening, throat] = /buy (\d+) that opens? ([\d.]+) mm with a throat of ([\d.]+) mm/.exec(
    remedy,
  )!;
  return { count: Number(count), opening: Number(opening), throat: Number(throat) };
}

test.each([
  // the frame is 400 wide and takes two pads of 8
  ['clamp-too-short', [{ opening: 400, throat: 80, count: 4 }], 400, 416],
  // half of the thickness lies between the line and the outside
  ['clamp-throat-too-short', [{ opening: 600, throat: 11, count: 4 }], 11, undefined],
  ['clamps-too-few', [{ opening: 600, throat: 80, count: 1 }], 1, 2],
] as const)('%s is told, and gone with the clamps its remedy asks for', (code, clamps, measured, limit) => {
  const [finding, ...more] = found(frame(), clamps);
  expect(more).toEqual([]);
  expect(finding).toMatchObject({ code, level: 'warning' });
  expect(finding!.measured).toBeCloseTo(measured, 6);
  const half = frame().boards[0]!.board.blank.thickness / 2;
  expect(finding!.limit).toBeCloseTo(limit ?? half, 6);
  expect(found(frame(), [...clamps, asked(finding!.remedy)])).toEqual([]);
});

test('a shop that names no clamps is not judged', () => {
  expect(found(frame(), [])).toEqual([]);
});

test('several wants of a large piece are told stage by stage, and are gone when all remedies are followed', () => {
  const few: Clamps = [
    { opening: 300, throat: 20, count: 1 },
    { opening: 700, throat: 15, count: 1 },
  ];
  const findings = found(armchair(), few);
  expect(findings.length).toBeGreaterThan(1);
  expect(found(armchair(), [...few, ...findings.map(({ remedy }) => asked(remedy))])).toEqual([]);
});

/** Whether a straight way may come into a box. */
function meetsBox(from: Vec3, to: Vec3, { min, max }: Box): boolean {
  let [enter, leave] = [0, 1];
  for (const axis of [0, 1, 2] as const) {
    const run = to[axis] - from[axis];
    if (run === 0) {
      if (from[axis] < min[axis] || from[axis] > max[axis]) return false;
      continue;
    }
    const [a, b] = [(min[axis] - from[axis]) / run, (max[axis] - from[axis]) / run];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  // a hair to spare for a way along a face
  return enter < leave + 1e-6;
}

/** The nearest side way out, felt for with rays across the line in every direction, at many places between the jaws. */
function throatByRays(design: Design, clamp: Clamp): number {
  const solids = solidsOf(kernel, design);
  const side = unit(cross(Math.abs(clamp.direction[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0], clamp.direction));
  const other = cross(clamp.direction, side);
  const [far, near] = clamp.ends.map(({ at }) => at);
  const bodies = [...solids.boards.values()].map(({ body }) => ({ body, room: box(body) }));
  let best = Number.POSITIVE_INFINITY;
  for (let turn = 0; turn < 360; turn += 3) {
    const angle = (turn * Math.PI) / 180;
    const out = add(scale(side, Math.cos(angle)), scale(other, Math.sin(angle)));
    let most = 0;
    // a way that is longer than another already is not the nearest
    for (let i = 1; i < 40 && most < best; i += 1) {
      const at: Vec3 = add(scale(near!, 1 - i / 40), scale(far!, i / 40));
      // from far outside towards the line: where wood is met first
      const outside = add(at, scale(out, 1000));
      for (const { body, room } of bodies) {
        if (!meetsBox(outside, at, room)) continue;
        const met = hit(body, outside, at);
        if (met !== undefined) most = Math.max(most, 1000 - met);
      }
    }
    best = Math.min(best, most);
  }
  return best;
}

test.each([
  ['frame', frame],
  ['stool', () => built(stoolModel)],
])('the throat of every clamp of a %s is the way out that rays find beside the solids', (_, make) => {
  const design = make();
  // all in one stage: every board is there
  const { clamps } = clampPlan(design, glueUp(design), []);
  expect(clamps.length).toBeGreaterThan(1);
  for (const clamp of clamps) {
    const felt = throatByRays(design, clamp);
    // rays stand 3° and a fortieth of the span apart, so what they find is a little more or less
    expect(Math.abs(clamp.throat - felt), `${clamp.id} ${clamp.throat} ${felt}`).toBeLessThan(1.5);
  }
});

test('clamps are shared out so that as many places as can be are served', () => {
  // the deep long one must be left for the deep place, though the long place is looked at first
  const needs = [
    { opening: 500, throat: 30 },
    { opening: 300, throat: 100 },
  ];
  const atHand = [
    { opening: 600, throat: 120, count: 1 },
    { opening: 700, throat: 50, count: 1 },
  ];
  expect(clampsChosen(needs, atHand).map(({ verdict }) => verdict)).toEqual(['passed', 'passed']);
  expect(clampsChosen(needs, atHand.slice(1))).toEqual([
    { verdict: 'passed' },
    { verdict: 'failed', wants: 'throat' },
  ]);
  expect(clampsChosen([...needs, needs[1]!], atHand)[2]).toEqual({ verdict: 'failed', wants: 'count' });
});

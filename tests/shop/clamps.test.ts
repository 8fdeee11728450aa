import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import stoolModel from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { add, angleDeg, dot, length, scale, subtract, type Vec3 } from '../../src/frame/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import {
  builtInShop,
  type Clamp,
  clampPlan,
  glueUp,
  jawsOutOfParallel,
  offcutWedges,
  padBoard,
  stagedByClamps,
} from '../../src/shop/index.js';
import {
  gap,
  hit,
  type Kernel,
  matrix,
  sharedVolume,
  solidsOf,
  startKernel,
  stockBody,
  volume,
} from '../../src/solid/index.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const built = (model: Model, raw: Readonly<Record<string, string | number>> = {}) =>
  model.build(readParameters(model, raw, 'mm'));

const planOf = (design: Design, openMinutes = 10) =>
  clampPlan(design, glueUp(design, { openMinutes, clampMinutes: 30, leastCelsius: 5 }));

const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);

const ofRail = (clamps: readonly Clamp[], rail: string) => clamps.filter((clamp) => clamp.rail === rail);

test('a frame is clamped over each short rail, flat pads outside: its width and two pads', () => {
  const { clamps, pads, unclamped } = planOf(built(frameModel));
  expect(unclamped).toEqual([]);
  expect(clamps.map(({ rail }) => rail)).toEqual(['left-rail', 'right-rail']);
  for (const clamp of clamps) {
    expect(clamp.opening).toBeCloseTo(400 + 2 * 8, 9);
    expect(clamp.ends.map(({ board }) => board).toSorted()).toEqual(['back-rail', 'front-rail']);
  }
  expect(pads.map(({ board, count }) => [board.id, count])).toEqual([['clamp-pad-flat', 4]]);
});

test('a stretcher between sides raked 10° takes wedges of 10°, and the opening is the outside size there and both pads', () => {
  const { clamps } = planOf(built(stoolModel, { overhang: 30, setback: 10, rake: 10, taper: 3 }));
  const [clamp, ...more] = ofRail(clamps, 'stretcher');
  expect(more).toEqual([]);
  expect(Math.abs(clamp!.direction[0])).toBeCloseTo(1, 9);
  for (const { angleDeg: lean, slideShare } of clamp!.ends) {
    expect(lean).toBeCloseTo(10, 6);
    expect(slideShare).toBeCloseTo(Math.sin(Math.PI / 18), 6);
  }
  // tread 420 less two overhangs of 30 at the top, spreading with the rake down to the clamp
  const height = clamp!.through[2];
  const outside = 360 + 2 * (202 - height) * tan(10);
  // 8 mm thin end, 50 mm long, measured along the clamp in the middle of its outer face
  const pad = (8 + 25 * tan(10)) / cos(10);
  expect(clamp!.opening).toBeCloseTo(outside + 2 * pad, 6);
});

test('a wide side takes two clamps, evenly beside the middle of its joint', () => {
  const design = built(stoolModel);
  const { clamps, offsets } = planOf(design);
  const pair = ofRail(clamps, 'left-side');
  expect(pair).toHaveLength(2);
  const joint = design.joints.find(({ id }) => id === 'tread/left-side')!;
  const middle = scale(
    joint.tenons.reduce<Vec3>((sum, { place }) => add(sum, place.origin), [0, 0, 0]),
    1 / joint.tenons.length,
  );
  const mean = scale(add(pair[0]!.through, pair[1]!.through), 1 / 2);
  expect(length(subtract(mean, middle))).toBeLessThan(1e-9);
  expect(offsets.every(({ offset, verdict }) => offset <= 2 && verdict === 'passed')).toBe(true);
});

test.each([
  ['stool', {}],
  ['stool with two treads', { treads: 2 }],
  [
    'stool raked 17.3° with mortises along the stretcher',
    { rake: 17.3, 'stretcher-axis': 'along-stretcher' },
  ],
  ['upright stool', { rake: 0 }],
] as const)(
  'every pad of a %s lies on wood without cutting into it, its jaw square to the clamp',
  (_, raw) => {
    const design = built(stoolModel, raw);
    const solids = solidsOf(kernel, design);
    const { clamps, pads } = planOf(design);
    expect(clamps.length).toBeGreaterThan(4);
    for (const clamp of clamps) {
      expect(jawsOutOfParallel(clamp)).toBeLessThan(0.1);
      clamp.ends.forEach(({ pad, board, at }, i) => {
        const made = pads.find((one) => one.board.id === pad.aid)!;
        const stock = kernel.keep(stockBody(kernel, made.board));
        const body = kernel.keep(stock.transform(matrix(pad.place)));
        const part = solids.boards.get(board)!.body;
        expect(gap(body, part, 1)).toBeLessThan(0.001);
        // a corner of a pad may touch the first facet of a round arch: not a thousandth of a millimetre over the pad
        expect(sharedVolume(body, part) / (50 * 28)).toBeLessThan(1e-4);
        // from outside, the clamp's line meets the pad at its stated thickness before the part
        const outwards = scale(clamp.direction, i === 0 ? 1 : -1);
        const start = add(at, scale(outwards, 100));
        expect(100 - hit(body, start, at)!).toBeCloseTo(pad.thickness, 4);
        expect(100 - pad.thickness).toBeGreaterThan(50);
      });
    }
  },
);

test('the jaw of a pad is square to the clamp, worked out from its own bevel', () => {
  const { clamps, pads } = planOf(built(stoolModel));
  const { pad } = clamps[0]!.ends[0];
  const bevel = pads.find(({ board }) => board.id === pad.aid)!.board.bevels[0]!;
  const { x, y, z } = pad.place;
  const [a, b, c] = bevel.normal;
  const jaw = add(add(scale(x, a), scale(y, b)), scale(z, c));
  expect(angleDeg(jaw, clamps[0]!.direction)).toBeLessThan(1e-6);
  expect(dot(z, clamps[0]!.ends[0].normal)).toBeCloseTo(1, 12);
});

test('a wedge pad holds half a block over its flat: volume by closed form', () => {
  const body = kernel.keep(stockBody(kernel, padBoard(10, 'white ash')));
  expect(volume(body)).toBeCloseTo(50 * 40 * (8 + 25 * tan(10)), 3);
});

test('offcuts are wedges of the angle they were cut at, and only long ones serve as pads', () => {
  const design = built(stoolModel, { overhang: 30, setback: 10, rake: 10, taper: 3 });
  const wedges = design.boards.flatMap(({ board }) => offcutWedges(board));
  const foot = wedges.find(({ board, cut }) => board === 'left-side' && cut === 'foot')!;
  // 28 thick at 10°: 28.4 along the slope, 4.9 at the thick end, too short for a pad of 40
  expect(foot.angleDeg).toBeCloseTo(10, 9);
  expect(foot.slope).toBeCloseTo(28 / cos(10), 9);
  expect(foot.thickEnd).toBeCloseTo(28 * tan(10), 9);
  expect(foot.serves).toBe(false);
  const slanted = wedges.filter(({ board }) => board === 'stretcher');
  // 70 wide and 24 thick: 8 thick only 45 up its slope of 71, so that 26 are left of it
  expect(slanted.map(({ serves }) => serves)).toEqual([false, false]);
  for (const { angleDeg: lean, slope, breadth } of slanted) {
    expect(lean).toBeCloseTo(10, 9);
    expect(slope).toBeCloseTo(70 / cos(10), 9);
    expect(breadth).toBe(24);
  }
  const tapered = wedges.filter(({ board, cut }) => board === 'left-side' && cut.startsWith('edge'));
  expect(tapered.map(({ angleDeg: lean }) => lean)).toEqual([expect.closeTo(3, 6), expect.closeTo(3, 6)]);
  const [pad] = planOf(design).pads;
  expect(pad!.offcuts[0]).toMatchObject({ board: 'stretcher', serves: false });
  expect(pad!.offcuts.every((wedge) => Math.abs(wedge.angleDeg - 10) < 0.05)).toBe(true);
  // a wide stretcher leaves a pad as long as 40 beyond the place where it is as thick as the thin end of a pad that is made: 8
  const wide = (stretcherWidth: number) =>
    built(stoolModel, { stretcherWidth, height: 400 })
      .boards.flatMap(({ board }) => offcutWedges(board))
      .filter(({ board }) => board === 'stretcher')
      .map(({ serves }) => serves);
  const least = (40 + 8 / tan(10)) * cos(10);
  expect(wide(Math.ceil(least))).toEqual([true, true]);
  expect(wide(Math.floor(least))).toEqual([false, false]);
});

test('an opening is verified against the clamps at hand, none of them used twice in a stage', () => {
  const design = built(frameModel);
  const up = glueUp(design);
  const verdicts = (...clamps: { opening: number; throat: number; count: number }[]) =>
    clampPlan(design, up, clamps).clamps.map(({ verdict }) => verdict);
  expect(verdicts()).toEqual(['not verified', 'not verified']);
  expect(verdicts({ opening: 416.1, throat: 80, count: 2 })).toEqual(['passed', 'passed']);
  expect(verdicts({ opening: 416.1, throat: 80, count: 1 })).toEqual(['passed', 'failed']);
  expect(verdicts({ opening: 415, throat: 80, count: 9 })).toEqual(['failed', 'failed']);
});

describe('a glue-up that wants more clamps at once than there are', () => {
  const design = built(stoolModel, { treads: 2 });
  const { glue, clamps } = builtInShop('mm');
  const up = glueUp(design, glue);
  const stagesOf = (atHand: typeof clamps) => {
    const staged = stagedByClamps(design, up, { ...(glue && { glue }), clamps: atHand });
    const plan = clampPlan(design, staged, atHand);
    expect(staged.stages.flatMap(({ steps }) => steps)).toEqual(up.steps.map(({ id }) => id));
    return {
      steps: staged.stages.map(({ steps }) => steps.length),
      joints: staged.stages.map(({ joints }) => joints),
      failed: plan.clamps.filter(({ verdict }) => verdict === 'failed').length,
    };
  };

  test('is done in stages, so that the clamps go round: both sides of a two-tread stool first, then its treads', () => {
    expect(clampPlan(design, up, clamps).clamps.filter(({ wants }) => wants === 'count')).toHaveLength(3);
    expect(stagesOf(clamps)).toEqual({ steps: [4, 2], joints: [4, 4], failed: 0 });
  });

  test('stays in one stage where the clamps suffice, where none are told, and where stages are of no help', () => {
    expect(stagesOf([{ opening: 600, throat: 95, count: 11 }])).toEqual({
      steps: [6],
      joints: [8],
      failed: 0,
    });
    expect(stagesOf([])).toEqual({ steps: [6], joints: [8], failed: 0 });
    expect(stagesOf([{ opening: 300, throat: 95, count: 11 }]).steps).toEqual([6]);
  });
});

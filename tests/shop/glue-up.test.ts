import { expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import stoolModel from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { angleDeg, unit } from '../../src/frame/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { bestMove, entriesOf, type GlueUp, glueUp, type Move } from '../../src/shop/index.js';
import { splayedBase } from './splayed-base.js';

const built = (model: Model, raw: Readonly<Record<string, string | number>> = {}) =>
  model.build(readParameters(model, raw, 'mm'));

const told = ({ steps }: GlueUp) =>
  steps.map(({ moving, still }) => `${moving.join('+')} -> ${still.join('+')}`);

const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
const sin = (degrees: number) => Math.sin((degrees * Math.PI) / 180);
const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);

test('both sides of a stool go onto the stretcher along the raked normals, the tread last and straight down', () => {
  const up = glueUp(built(stoolModel));
  expect(told(up)).toEqual([
    'left-side -> stretcher',
    'right-side -> left-side+stretcher',
    'tread -> left-side+right-side+stretcher',
  ]);
  expect(up.steps.map(({ freedom }) => freedom)).toEqual(['free', 'free', 'free']);
  expect(angleDeg(up.steps[0]!.direction, [cos(10), 0, -sin(10)])).toBeLessThan(1e-6);
  expect(angleDeg(up.steps[1]!.direction, [-cos(10), 0, -sin(10)])).toBeLessThan(1e-6);
  expect(angleDeg(up.steps[2]!.direction, [0, 0, -1])).toBeLessThan(1e-6);
  expect(up.conflicts).toEqual([]);
});

test('mortises along the stretcher let the sides travel level', () => {
  const up = glueUp(built(stoolModel, { 'stretcher-axis': 'along-stretcher', treads: 2 }));
  expect(angleDeg(up.steps[0]!.direction, [1, 0, 0])).toBeLessThan(1e-6);
  expect(up.steps.map(({ freedom }) => freedom)).toEqual(Array(6).fill('free'));
  // both steps slide on to their sides, then both treads come down
  for (const { direction } of up.steps.slice(2, 4)) expect(angleDeg(direction, [0, 1, 0])).toBeLessThan(1e-6);
  expect(up.steps.slice(4).every(({ direction }) => angleDeg(direction, [0, 0, -1]) < 1e-6)).toBe(true);
});

test('a frame closes with both short rails entering the last long rail together', () => {
  const up = glueUp(built(frameModel));
  expect(up.steps.map(({ joints }) => joints.length)).toEqual([1, 1, 2]);
  expect(up.steps.every(({ freedom }) => freedom === 'free')).toBe(true);
});

test('tenons are glued first into the board whose mortise is in end grain', () => {
  const up = glueUp(built(stoolModel));
  expect(Object.fromEntries(up.seatings.map(({ joint, board }) => [joint, board]))).toEqual({
    'tread/left-side': 'left-side',
    'tread/right-side': 'right-side',
    'stretcher/left-side': 'stretcher',
    'stretcher/right-side': 'stretcher',
  });
  // a tread 28 thick takes half its thickness less the end gap of 1
  expect(up.seatings[0]!.standsOut).toBeCloseTo(13, 9);
});

test('the open time splits a glue-up into stages, and a step too long for it fails', () => {
  const glue = (openMinutes: number) => ({ openMinutes, clampMinutes: 30, leastCelsius: 5 });
  const stool = built(stoolModel);
  // one minute a joint: 1 + 1 + 2
  expect(
    glueUp(stool, glue(4)).stages.map(({ steps, minutes, verdict }) => ({ steps, minutes, verdict })),
  ).toEqual([{ steps: ['G1', 'G2', 'G3'], minutes: 4, verdict: 'passed' }]);
  expect(glueUp(stool, glue(3)).stages.map(({ steps }) => steps)).toEqual([['G1', 'G2'], ['G3']]);
  expect(glueUp(stool, glue(1)).stages.map(({ verdict }) => verdict)).toEqual(['passed', 'passed', 'failed']);
  expect(glueUp(stool).stages.map(({ verdict }) => verdict)).toEqual(['not verified']);
  expect(glueUp(stool, glue(3)).steps.map(({ stage }) => stage)).toEqual([1, 1, 2]);
});

/**
 * Square legs leaning ρ along a rail and σ across it, one pair of faces true to the other rails: the normals of the faces
 * the rails meet are (1/cos σ, ∓sin σ·tan ρ, −cos σ·tan ρ) at the two ends of a side frame, and their mean lies between:
 * tan θ = sin σ·cos σ·tan ρ / √(1 + cos⁴σ·tan²ρ). Vector algebra by hand.
 */
const leanOfRails = (rake: number, splay: number) =>
  (sin(splay) * cos(splay) * tan(rake)) / Math.hypot(1, cos(splay) ** 2 * tan(rake));

const LEANING = (degrees: number) => ({ rakeDeg: degrees, splayDeg: degrees, into: 25, cheek: 0.075 });

/** The move that closes both skewed rails at once, each side frame being glued before. */
function sideFramesFirst(design: Design): Move {
  const first = new Set(['leg-11', 'leg-12', 'y-rail-1']);
  const second = new Set(['leg-21', 'leg-22', 'y-rail-2', 'x-rail-1', 'x-rail-2']);
  const crossing = entriesOf(design).filter(
    ({ owner, receiver }) => first.has(owner) !== first.has(receiver),
  );
  return bestMove(first, second, crossing)!;
}

test.each([
  [3, 'free', 0.068, 0],
  [4, 'sprung', 0.121, 0.046],
  [5, 'sprung', 0.189, 0.114],
  [8, 'sprung', 0.48, 0.405],
  [15, 'locked', 1.625, 1.55],
] as const)(
  'rails square to legs that lean %i° both ways are %s: 25 mm tenons stand aside',
  (degrees, freedom, shift, excess) => {
    const design = splayedBase({ ...LEANING(degrees), rails: true });
    const move = sideFramesFirst(design);
    expect(move.entries).toHaveLength(2);
    for (const entered of move.entries) {
      expect(entered.shift).toBeCloseTo(25 * leanOfRails(degrees, degrees), 9);
      expect(entered.shift).toBeCloseTo(shift, 2);
      expect(entered.excess).toBeCloseTo(excess, 3);
    }
    expect(move.freedom).toBe(freedom);
  },
);

test.each([4, 8, 15])(
  'legs that lean %i° both ways close freely along their true faces when the skewed rails go in one leg at a time',
  (degrees) => {
    const up = glueUp(splayedBase({ ...LEANING(degrees), rails: true }));
    expect(up.conflicts).toEqual([]);
    expect(up.steps.every((step) => step.freedom === 'free')).toBe(true);
    const together = up.steps.filter(({ joints }) => joints.length > 1);
    expect(together.flatMap(({ joints }) => joints.map(({ joint }) => joint[0]))).toEqual(['y', 'y']);
  },
);

test('a rail of 20 by 60 and about 200 long takes about 70 N to spring by 0.4 mm', () => {
  const design = splayedBase({ ...LEANING(8), rails: true });
  const [entered] = sideFramesFirst(design).entries;
  const seats = design.joints.filter(({ a }) => a === 'x-rail-1').map(({ seat }) => seat.origin);
  const reach = Math.hypot(...seats[0]!.map((at, i) => at - seats[1]![i]!));
  // F = 3·E·I·x/l³, white ash 1.74 Mpsi; the push is level to within the lean
  const force = (3 * 1.74e6 * 0.006894757 * ((60 * 20 ** 3) / 12) * entered!.excess) / reach ** 3;
  expect(reach).toBeGreaterThan(180);
  expect(entered!.forceN!).toBeGreaterThan(0.97 * force);
  expect(entered!.forceN!).toBeLessThan(1.1 * force);
  expect((force * reach ** 3) / 200 ** 3).toBeCloseTo(73, 0);
});

test.each([
  [4, 2.5],
  [8, 5],
  [15, 9.5],
])(
  'legs that lean %i° both ways, with mortises along them, stand %f mm aside of a top that comes straight down',
  (degrees, shift) => {
    const design = splayedBase({
      rakeDeg: degrees,
      splayDeg: degrees,
      topAxis: 'along b',
      into: 25,
      cheek: 0.075,
    });
    const entries = entriesOf(design);
    const legs = new Set(entries.map(({ owner }) => owner));
    const move = bestMove(new Set(['top']), legs, entries)!;
    expect(move.freedom).toBe('locked');
    expect(angleDeg(move.direction, [0, 0, -1])).toBeLessThan(1e-6);
    for (const entered of move.entries) {
      // two leans make one: tan² of the whole is the sum of both; the engaged length is the tenon's and the mouth's drop
      const lean = Math.hypot(tan(degrees), tan(degrees));
      expect(Math.tan((entered.leanDeg * Math.PI) / 180)).toBeCloseTo(lean, 9);
      expect(25 * lean).toBeCloseTo(shift, 0.9);
      expect(entered.shift).toBeGreaterThanOrEqual(25 * lean - 1e-9);
    }
    // one leg at a time it goes in
    const up = glueUp(design);
    expect(up.conflicts).toEqual([]);
    expect(up.steps.every(({ joints, freedom }) => joints.length === 1 && freedom === 'free')).toBe(true);
  },
);

test('a base with rails cannot be glued into a top whose mortises follow the legs, and the joints are named', () => {
  const up = glueUp(
    splayedBase({ rakeDeg: 8, splayDeg: 8, rails: true, topAxis: 'along b', into: 25, cheek: 0.075 }),
  );
  expect(up.steps).toEqual([]);
  expect(up.conflicts).toHaveLength(1);
  expect(up.conflicts[0]!.boards).toContain('top');
  expect(up.conflicts[0]!.joints.length).toBeGreaterThan(2);
});

test('the same base goes into a top whose mortises stand square to it', () => {
  const up = glueUp(
    splayedBase({ rakeDeg: 4, splayDeg: 4, rails: true, topAxis: 'face', into: 25, cheek: 0.075 }),
  );
  expect(up.conflicts).toEqual([]);
  expect(up.steps.at(-1)!.moving).toEqual(['top']);
  expect(angleDeg(up.steps.at(-1)!.direction, unit([0, 0, -1]))).toBeLessThan(1e-6);
});

import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import stoolModel from '../../models/stool.js';
import { assemble, type Design } from '../../src/assembly/index.js';
import { makeBoard, mouthOf } from '../../src/board/index.js';
import { failed, runChecks } from '../../src/checks/index.js';
import { angleDeg, directionOut, dot, frame, type Vec3, WORLD } from '../../src/frame/index.js';
import type { AxisOption, JoinOptions } from '../../src/joinery/index.js';
import { speaker } from '../../src/length/index.js';
import { readParameters } from '../../src/model/index.js';
import { area, obround } from '../../src/profile/index.js';
import {
  type Kernel,
  measureJoints,
  type Solids,
  solidsOf,
  startKernel,
  volume,
} from '../../src/solid/index.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);
const sin = (degrees: number) => Math.sin((degrees * Math.PI) / 180);

/** A thick board flat on the floor, and a post that stands on it. */
function post(axis: AxisOption | undefined, options: JoinOptions = {}): Design {
  return assemble({
    name: 'post',
    title: 'Post',
    cutter: 10,
    boards: [
      {
        board: makeBoard({ id: 'post', blank: { length: 200, width: 120, thickness: 60 } }),
        // grain up, width along x
        place: frame([180, 60, 60], [0, -1, 0], [0, 0, 1]),
      },
      {
        board: makeBoard({ id: 'floor', blank: { length: 300, width: 120, thickness: 60 } }),
        place: { ...WORLD, origin: [0, -30, 0] },
      },
    ],
    joints: [
      {
        a: 'post',
        b: 'floor',
        options: { cutter: 10, tenons: 1, tenonWidth: 39, ...options, ...(axis ? { axis } : {}) },
      },
    ],
  });
}

const mortises = (design: Design) => design.boards.flatMap(({ board }) => board.mortises);
const measured = (solids: Solids) => measureJoints(solids)[0]!;
const verdict = (solids: Solids) => runChecks({ solids, tenons: measureJoints(solids), say: speaker('mm') });

test('a joint square to its face is the same whether its axis is asked for or not', () => {
  expect(post('face')).toEqual(post(undefined));
  expect(post('along a')).toEqual(post(undefined));
  expect(post([0, 0, -5])).toEqual(post(undefined));
  expect(mortises(post(undefined)).every((mortise) => !('faceNormal' in mortise))).toBe(true);
});

test.each([
  ['along the mortise', [1, 0]],
  ['across the mortise', [0, 1]],
  ['both ways', [0.6, 0.8]],
] as const)('mortises that lean %s take the obround times their depth out of each board', (_, [x, y]) => {
  for (const lean of [2, 10, 20]) {
    const axis: Vec3 = [x * sin(lean), y * sin(lean), -cos(lean)];
    const design = post(axis);
    const solids = solidsOf(kernel, design);
    const [joint] = design.joints;
    expect(angleDeg(joint!.tenons[0]!.place.z, axis)).toBeLessThan(1e-6);
    for (const { board, stock, own } of solids.boards.values()) {
      const [mortise] = board.mortises;
      // the middle of an obround is the mean of the slanted mouth over it: the volume is area · depth in the middle
      const expected = area(obround(mortise!)) * mortise!.depth;
      expect(Math.abs(volume(stock) - volume(own) - expected)).toBeLessThan(0.001 * expected);
      // the face normal seen in the mortise gives the drop: L/2 along it, w/2 across
      const mouth = mouthOf(mortise!);
      expect(mouth.leanDeg).toBeCloseTo(lean, 9);
      expect(mouth.longDepth - mouth.shortDepth).toBeCloseTo(2 * mouth.drop, 9);
      if (y === 0) expect(mouth.drop).toBeCloseTo((mortise!.length / 2) * tan(lean), 6);
      if (x === 0) expect(mouth.drop).toBeCloseTo((mortise!.width / 2) * tan(lean), 6);
    }
  }
});

test.each([0, 2, 5, 10, 15, 20])('a tenon that leans %i° fits its two mortises on the solids', (lean) => {
  for (const way of [
    [1, 0],
    [0, 1],
    [0.6, -0.8],
  ] as const) {
    const solids = solidsOf(kernel, post([way[0] * sin(lean), way[1] * sin(lean), -cos(lean)]));
    const tenon = measured(solids);
    expect(tenon.offLine).toBeLessThan(0.01);
    expect(tenon.offLineDeg).toBeLessThan(0.01);
    for (const found of tenon.mortises) {
      expect(found.width).toBeCloseTo(10, 2);
      expect(found.length).toBeCloseTo(40, 1);
      expect(found.depth).toBeCloseTo(found.mortise.depth, 3);
      expect(found.bottomClearance).toBeCloseTo(1, 3);
      expect(found.cheekClearance).toBeGreaterThan(0.1 - 0.011);
      expect(found.cheekClearance).toBeLessThan(0.1 + 0.011);
    }
    expect(failed(verdict(solids))).toBe(false);
  }
});

test('the wall below an oblique mortise is what its deepest corner leaves', () => {
  for (const lean of [0, 5, 10, 20]) {
    const depth = 44;
    const solids = solidsOf(kernel, post([sin(lean), 0, -cos(lean)], { depths: { floor: depth, post: 20 } }));
    const inFloor = measured(solids).mortises.find(({ board }) => board === 'floor')!;
    // a depth that is given counts from the short point
    const drop = 20 * tan(lean);
    expect(inFloor.mortise.depth).toBeCloseTo(depth + drop, 9);
    // the bottom is square to the axis: its low corner lies half a length times sin lower than its middle
    const deepest = (depth + drop) * cos(lean) + 20 * sin(lean);
    expect(inFloor.wall).toBeCloseTo(60 - deepest, 1);
  }
});

test('the wood past the end of an oblique mortise is measured along the face', () => {
  for (const lean of [0, 10, 20]) {
    const solids = solidsOf(kernel, post([sin(lean), 0, -cos(lean)], { shiftAlong: 0 }));
    const inPost = measured(solids).mortises.find(({ board }) => board === 'post')!;
    const tenon = solids.design.joints[0]!.tenons[0]!;
    const half = 20 / cos(lean);
    // the post is 120 wide, from x = 60 to 180
    const nearer = Math.min(180 - (tenon.place.origin[0] + half), tenon.place.origin[0] - half - 60);
    // measured half a millimetre down, where the mortise has moved by that times the lean
    expect(Math.abs(inPost.endWood - nearer)).toBeLessThan(0.6 * tan(lean) + 0.02);
  }
});

test('a wall is thinner by depth times tan of the lean, seen along the face: 3° to 15° over 25 mm', () => {
  // rows of a table worked by hand: 25·tan
  for (const [lean, lost] of [
    [3, 1.3],
    [5, 2.2],
    [8, 3.5],
    [10, 4.4],
    [15, 6.7],
  ] as const) {
    const [mortise] = post([sin(lean), 0, -cos(lean)]).boards[1]!.board.mortises;
    const { leanDeg, sideways } = mouthOf({ ...mortise!, depth: 25 / cos(lean) });
    expect(leanDeg).toBeCloseTo(lean, 6);
    // 25 mm below the face
    expect(sideways).toBeCloseTo(25 * tan(lean), 9);
    expect(sideways).toBeCloseTo(lost, 1);
    expect(dot(mortise!.at.z, mouthOf(mortise!).normal)).toBeCloseTo(cos(lean), 9);
  }
});

test('across a slanted end a mortise is deeper on one side by its length times tan: 40 long at 5°, 8° and 10°', () => {
  for (const [lean, deeper] of [
    [5, 3.5],
    [8, 5.6],
    [10, 7.1],
  ] as const) {
    const [mortise] = post([sin(lean), 0, -cos(lean)]).boards[1]!.board.mortises;
    const { longDepth, shortDepth } = mouthOf(mortise!);
    expect(mortise!.length).toBe(40);
    expect(longDepth - shortDepth).toBeCloseTo(40 * tan(lean), 9);
    expect(longDepth - shortDepth).toBeCloseTo(deeper, 1);
  }
});

test('mortises along the stretcher run level in raked sides, and the design passes every check', () => {
  for (const raw of [
    { rake: 10 },
    { rake: 20, treads: 2 },
    { rake: 4, 'stretcher-tenons': 2, 'stretcher-width': 120, 'stretcher-height': 60 },
  ]) {
    const design = stoolModel.build(
      readParameters(stoolModel, { ...raw, 'stretcher-axis': 'along-stretcher' }, 'mm'),
    );
    for (const { board, place } of design.boards) {
      for (const mortise of board.mortises.filter(({ joint }) => joint.startsWith('stretcher'))) {
        expect(Math.abs(directionOut(place, mortise.at.z)[0])).toBeCloseTo(1, 9);
        expect(mouthOf(mortise).leanDeg).toBeCloseTo(raw.rake, 6);
      }
    }
    const solids = solidsOf(kernel, design);
    expect(verdict(solids).filter(({ level }) => level === 'error')).toEqual([]);
  }
});

test('for all leans every tenon clears its mortises and every board holds what its data say', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 25, noNaN: true }),
      fc.double({ min: 0, max: 360, noNaN: true }),
      fc.boolean(),
      (lean, turn, turned) => {
        const axis: Vec3 = [sin(lean) * cos(turn), sin(lean) * sin(turn), -cos(lean)];
        const solids = solidsOf(kernel, post(axis, { turned, tenonWidth: 25, cutter: 8 }));
        expect(verdict(solids).filter(({ level }) => level === 'error')).toEqual([]);
      },
    ),
    { numRuns: 40, seed: 3 },
  );
});

test('an axis that is no axis, or lies too flat, is refused with what is allowed', () => {
  expect(() => post('sideways' as unknown as AxisOption)).toThrow(/axis is "sideways"; it must be 'face'/);
  expect(() => post([0, 0, 0])).toThrow(/not zero/);
  expect(() => post([0, Number.NaN, 1])).toThrow(/it must be/);
  expect(() => post('along b')).toThrow(/lean 90° from square to its seat; they may lean 45° at most/);
  expect(() => post([1, 0, -0.99])).toThrow(/lean 45/);
});

// Frames against numpy, which solves them another way: textbook matrices, rigid ties as equations.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { expect } from 'vitest';
import { cross, unit, type Vec3 } from '../../src/frame/index.js';
import { type Bar, type Bent, type FrameLoad, spaceFrame, type Tie } from '../../src/statics/index.js';
import { many, seed } from '../properties/seed.js';
import { NUMPY, printed, testWith } from './programs.js';

interface Case {
  readonly nodes: readonly Vec3[];
  readonly bars: readonly Bar[];
  readonly ties: readonly Tie[];
  readonly loads: readonly FrameLoad[];
}

const part = fc.double({ min: -1, max: 1, noNaN: true });
const vector = (size: number) =>
  fc.tuple(part, part, part).map(([x, y, z]): Vec3 => [x * size, y * size, z * size]);
const way = vector(1).map((v): Vec3 => (Math.hypot(...v) < 0.1 ? [0, 0, 1] : unit(v)));

/** A chain of bars that wanders from a place. */
const chain = (from: Vec3) =>
  fc.array(vector(60), { minLength: 2, maxLength: 3 }).map((steps) => {
    let at = from;
    return [
      at,
      ...steps.map((step): Vec3 => {
        at = [at[0] + step[0] + 80, at[1] + step[1], at[2] + step[2]];
        return at;
      }),
    ];
  });

const section = fc.record({
  elasticity: fc.double({ min: 5_000, max: 15_000, noNaN: true }),
  shearModulus: fc.double({ min: 400, max: 1_000, noNaN: true }),
  area: fc.double({ min: 400, max: 8_000, noNaN: true }),
  inertia: fc.double({ min: 2e4, max: 2e6, noNaN: true }),
  inertiaAcross: fc.double({ min: 2e4, max: 2e6, noNaN: true }),
  torsion: fc.double({ min: 1e4, max: 1e6, noNaN: true }),
  deep: fc.constant<Vec3>([0.3, -0.2, 5]),
});

const axesOf = (z: Vec3): readonly [Vec3, Vec3, Vec3] => {
  const x = unit(cross(z, Math.abs(z[0]) < 0.8 ? [1, 0, 0] : [0, 1, 0]));
  return [x, cross(z, x), z];
};

const turning = fc.oneof(
  fc.constant(Number.POSITIVE_INFINITY),
  fc.double({ min: 1e6, max: 1e8, noNaN: true }),
);
const RIGID: Vec3 = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];

/** Two chains on the floor at their starts, one clamped and one on a hinge, tied to each other at two places. */
const frames: fc.Arbitrary<Case> = fc
  .tuple(chain([0, 0, 0]), chain([0, 150, 40]), fc.array(section, { minLength: 8, maxLength: 8 }))
  .chain(([one, other, sections]) => {
    const nodes = [...one, ...other];
    const start = one.length;
    const bars = [one, other].flatMap((of, which) =>
      of.slice(1).map((_, i): Bar => {
        const from = which * start + i;
        return { ...sections[from]!, from, to: from + 1 };
      }),
    );
    const tie = (from: number, to: number) =>
      fc
        .record({ at: vector(100), axes: way.map(axesOf), turns: fc.tuple(turning, turning, turning) })
        .map((rest): Tie => ({ from, to, moves: RIGID, ...rest }));
    const floor = (to: number, turns: Vec3): Tie => ({
      to,
      at: nodes[to]!,
      axes: axesOf([0, 0, 1]),
      moves: RIGID,
      turns,
    });
    const load = fc.record({
      node: fc.integer({ min: 1, max: nodes.length - 1 }),
      at: vector(120),
      force: vector(2000).map(([x, y, z]): Vec3 => [x, y, z - 3000]),
    });
    return fc
      .tuple(
        tie(1, start + 1),
        tie(start - 1, nodes.length - 1),
        fc.array(load, { minLength: 1, maxLength: 3 }),
      )
      .map(([near, far, loads]) => ({
        nodes,
        bars,
        ties: [floor(0, RIGID), floor(start, [0, 0, 0]), near, far],
        loads,
      }));
  });

/** What numpy finds, all in one start of it. */
function byNumpy(cases: readonly Case[]): readonly Record<'moves' | 'turns' | 'passed', number[][]>[] {
  const folder = mkdtempSync(path.join(tmpdir(), 'frames-'));
  try {
    const file = path.join(folder, 'frames.json');
    // an infinite stiffness becomes null
    writeFileSync(file, JSON.stringify(cases));
    return JSON.parse(printed(NUMPY, path.join(import.meta.dirname, 'direct_stiffness.py'), file));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const flat = ({ moves, turns, passed }: Bent) => ({
  moves: moves.map((v) => [...v]),
  turns: turns.map((v) => [...v]),
  passed: passed.map(({ force, moment }) => [...force, ...moment]),
});

testWith(NUMPY, 'random frames bend and pass on their loads as numpy finds', () => {
  const { numRuns, seed: start } = seed(many(40, 200));
  const cases = fc.sample(frames, { numRuns, seed: start });
  const found = cases.map(({ nodes, bars, ties, loads }) => flat(spaceFrame(nodes, bars, ties)!(loads)));
  byNumpy(cases).forEach((theirs, i) => {
    for (const what of ['moves', 'turns', 'passed'] as const) {
      const [mine, other] = [found[i]![what].flat(), theirs[what].flat()];
      // forces and moments are judged each by the largest of their kind
      const kind = (at: number) => (what === 'passed' && at % 6 > 2 ? 1 : 0);
      for (const k of [0, 1]) {
        const largest = Math.max(...other.map((x, at) => (kind(at) === k ? Math.abs(x) : 0)));
        const off = Math.max(...mine.map((x, at) => (kind(at) === k ? Math.abs(x - other[at]!) : 0)));
        expect(off, `${what} of frame ${i}`).toBeLessThanOrEqual(1e-3 * largest);
      }
    }
  });
});

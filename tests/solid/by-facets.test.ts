import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import type { Mortise } from '../../src/board/index.js';
import { moved, pointOut, type Vec3, WORLD } from '../../src/frame/index.js';
import {
  type Body,
  type Cavity,
  cavitiesByKernel,
  clearancesByFacets,
  clearancesByKernel,
  doubleMesh,
  facetGap,
  facetsOf,
  facetsVolume,
  gap,
  isConvex,
  type Kernel,
  knownSolid,
  mortiseCavities,
  outsideIn,
  outsideOf,
  parted,
  pathClear,
  type Solids,
  sharedVolume,
  solidsOf,
  standingIn,
  startKernel,
} from '../../src/solid/index.js';
import { OVERLAP_MM3 } from '../../src/tolerances.js';
import { sample, withMortises } from '../checks/sample-design.js';
import { sampledDesigns } from '../properties/sampled-designs.js';
import { many, SEED, seed } from '../properties/seed.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

/** Two ways to one figure agree this well, mm: the kernel takes outlines in single precision. */
const SAME = 1e-8;

/** Random designs looked at; more are compared by hand with tests/speed/same-verdicts.mjs. */
const DESIGNS = many(5, 60);

const designs = (): readonly (readonly [string, Design])[] =>
  [...sampledDesigns(DESIGNS, SEED)].flatMap(({ name, design }) => (design ? [[name, design] as const] : []));

const anywhere = fc
  .tuple(...Array.from({ length: 6 }, () => fc.double({ min: -1, max: 1, noNaN: true })))
  .filter((n) => Math.hypot(n[0]!, n[1]!, n[2]!) > 0.1 && Math.abs(n[0]! * n[4]! - n[1]! * n[3]!) > 0.05)
  .map(
    ([a, b, c, d, e, f]) =>
      () =>
        kernel.keep(
          kernel.wasm.Manifold.cube([7, 3, 5])
            .rotate([a! * 180, b! * 180, c! * 180])
            .translate([d! * 12, e! * 12, f! * 12]),
        ),
  );

test('the corners of a body come in double precision, in the order of its triangles', () => {
  const ball = kernel.keep(kernel.wasm.Manifold.sphere(10, 32).translate([1 / 3, 0, 0]));
  const { corners } = doubleMesh(ball);
  for (let i = 0; i < corners.length; i += 3) {
    const from = Math.hypot(corners[i]! - 1 / 3, corners[i + 1]!, corners[i + 2]!);
    expect(Math.abs(from - 10)).toBeLessThan(1e-12);
  }
  expect(facetsVolume(facetsOf(ball))).toBeCloseTo(ball.volume(), 8);
  expect(isConvex(ball)).toBe(true);
  const bitten = kernel.keep(ball.subtract(ball.translate([9, 0, 0])));
  expect(isConvex(bitten)).toBe(false);
});

test('for all pairs of blocks the gap between their facets is the one the kernel measures', () => {
  fc.assert(
    fc.property(anywhere, anywhere, (one, other) => {
      const [a, b] = [one(), other()];
      const found = facetGap(knownSolid(a).tree, knownSolid(b).tree, 20);
      expect(Math.abs(found - gap(a, b, 20))).toBeLessThan(SAME);
    }),
    seed(150),
  );
});

test('for all pairs of blocks a plane between them, or a way proved clear, means that they share no wood', () => {
  let [apart, clear] = [0, 0];
  fc.assert(
    fc.property(anywhere, anywhere, (one, other) => {
      const [a, b] = [one(), other()];
      const shared = sharedVolume(a, b);
      if (parted(outsideOf(a), outsideOf(b))) {
        apart += 1;
        expect(shared).toBeLessThan(OVERLAP_MM3);
      }
      const from: Vec3 = [25, 3, -4];
      if (pathClear({ own: a, place: WORLD }, { own: b, place: WORLD }, from)) {
        clear += 1;
        const way = kernel.wasm.Manifold.hull([a.translate([...from]), a]);
        expect(sharedVolume(way, b)).toBe(0);
        way.delete();
      }
    }),
    seed(150),
  );
  // the proof is of use: it settles most of those that are apart
  expect(apart).toBeGreaterThan(50);
  expect(clear).toBeGreaterThan(30);
});

test('blocks that lie on each other at any angle are parted by the face they share, and not when one sinks in by a hair', () => {
  const block = kernel.keep(kernel.wasm.Manifold.cube([40, 30, 20]));
  const leaning = {
    origin: [3, -2, 7] as Vec3,
    x: [0.8, 0.6, 0] as Vec3,
    y: [-0.48, 0.64, 0.6] as Vec3,
    z: [0.36, -0.48, 0.8] as Vec3,
  };
  const first = outsideIn(outsideOf(block), leaning);
  const onTop = (sunk: number) =>
    outsideIn(outsideOf(block), { ...leaning, origin: pointOut(leaning, [5, 5, 20 - sunk]) });
  expect(parted(first, onTop(0))).toBe(true);
  expect(parted(first, onTop(1e-3))).toBe(false);
});

const figures = ({ facets: _, body: __, mouth: ___, alone: ____, ...cavity }: Cavity) => cavity;

/** Every cavity and clearance of a design, by facets and by the kernel's booleans. */
function compared(solids: Solids): { byFacets: number; byKernel: number } {
  const counted = { byFacets: 0, byKernel: 0 };
  for (const board of solids.boards.values()) {
    const [found, proved] = [mortiseCavities(kernel, board), cavitiesByKernel(kernel, board)];
    for (const [mortise, cavity] of found) {
      const before = proved.get(mortise)!;
      expect(Math.abs(cavity.wall.least - before.wall.least)).toBeLessThan(SAME);
      expect(Math.abs(cavity.volume / before.volume - 1)).toBeLessThan(SAME);
      if (cavity.alone) counted.byFacets += 1;
      else counted.byKernel += 1;
      const tenon = solids.tenons.get(mortise.tenon)!;
      // for a tenon that stops short, and for one that goes through the bottom
      for (const bottom of [1, -2]) {
        const fast = clearancesByFacets(board, mortise, cavity, tenon, bottom);
        const slow = clearancesByKernel(kernel, board, tenon, bottom);
        if (!fast) continue;
        expect(Math.abs(fast.cheekClearance - slow.cheekClearance)).toBeLessThan(SAME);
        expect(Math.abs(fast.flankClearance - slow.flankClearance)).toBeLessThan(SAME);
      }
    }
  }
  return counted;
}

test(`for all designs walls and clearances by facets are those by booleans, and sound ones need none (seed ${SEED})`, () => {
  for (const [name, design] of designs()) {
    const { byFacets, byKernel } = compared(solidsOf(kernel, design));
    expect(byFacets, name).toBeGreaterThan(0);
    expect(byKernel, name).toBe(0);
  }
});

const deeper = (by: number) => (mortise: Mortise) => ({ ...mortise, depth: mortise.depth + by });
const shifted = (by: Vec3) => (mortise: Mortise) => ({ ...mortise, at: moved(mortise.at, by) });

test.each<[what: string, design: Design, alone: boolean]>([
  ['a mortise that breaks through', withMortises(sample(), 'shelf', deeper(40)), false],
  [
    'a mortise that leaves a skin of 0.005 mm',
    withMortises(sample(), 'shelf', (m) => ({ ...m, depth: 39.995 })),
    true,
  ],
  ['a mortise that breaks out of an edge', withMortises(sample(), 'upright', shifted([0, 60, 0])), false],
  [
    'two mortises that meet',
    withMortises(sample({ tenons: 2 }), 'upright', (m) => ({ ...m, length: m.length + 60 })),
    false,
  ],
  [
    'a tenon set into its cheek',
    withMortises(sample(), 'upright', (m) => ({ ...m, width: m.width - 1 })),
    true,
  ],
  ['a mortise moved along its face', withMortises(sample(), 'shelf', shifted([0, 3, 0])), true],
])('%s is measured alike by facets and by booleans', (_, design, alone) => {
  const solids = solidsOf(kernel, design);
  const { byFacets, byKernel } = compared(solids);
  expect(byKernel > 0).toBe(!alone);
  expect(byFacets + byKernel).toBeGreaterThan(1);
});

test('a mortise with a peg of wood left in it, or with a hole into it, is left to the kernel', () => {
  const design = sample();
  const solids = solidsOf(kernel, design);
  const board = solids.boards.get('upright')!;
  const [mortise] = board.board.mortises as [Mortise];
  const in_ = (body: Body, at: Vec3) => kernel.keep(standingIn(body.translate([...at]), mortise.at));
  const peg = in_(kernel.wasm.Manifold.cube([2, 2, mortise.depth]), [0, 0, -mortise.depth]);
  const hung = in_(kernel.wasm.Manifold.cube([2, 2, 4]), [0, 0, -3]);
  const bored = in_(kernel.wasm.Manifold.cube([1, 60, 1]), [0, 0, -5]);
  const cases: readonly (readonly [Body, boolean])[] = [
    // its own body is the kernel's: what is kept here is a copy
    [board.own.translate([0, 0, 0]), true],
    // wood that stands on the bottom is one surface with it: the air round it is still alone
    [board.own.add(peg), true],
    [board.own.add(hung), false],
    [board.own.subtract(bored), false],
  ];
  for (const [own, alone] of cases) {
    const spoilt = { ...board, own: kernel.keep(own) };
    const cavity = mortiseCavities(kernel, spoilt).get(mortise)!;
    expect(cavity.alone).toBe(alone);
    const proved = cavitiesByKernel(kernel, spoilt).get(mortise)!;
    expect(figures(cavity).wall.least).toBeCloseTo(proved.wall.least, 9);
    expect(cavity.volume).toBeCloseTo(proved.volume, 5);
  }
});

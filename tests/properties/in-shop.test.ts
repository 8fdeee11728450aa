import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import { benchOf, dryRun, heldMortises } from '../../src/checks/index.js';
import { speaker } from '../../src/length/index.js';
import { clampPlan, orderOfWork, provedGlueUp, stagedByClamps } from '../../src/shop/index.js';
import { gate, type Kernel, solidsOf, startKernel } from '../../src/solid/index.js';
import { COPLANAR, PARALLEL_DEG } from '../../src/tolerances.js';
import { off } from '../shop/cut-by-cards.js';
import { carded } from '../shop/made.js';
import { built, wishes } from './random-designs.js';
import { angled, builtAngled } from './random-joints.js';
import { many, SEED, seed } from './seed.js';

/** Designs with joints at angles, and stools and frames, that are taken to the shop. */
const ANGLED = many(10, 40);
const MODELS = many(4, 12);

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const met = {
  designs: 0,
  refused: 0,
  mortises: 0,
  marked: 0,
  wedged: 0,
  uncut: 0,
  stuck: 0,
  stages: 0,
  clamps: 0,
};

afterAll(() => console.log(`seed ${SEED}: ${JSON.stringify(met)}`));

/** Takes a design to the shop, and says what is wrong there. */
async function inShop(design: Design): Promise<void> {
  const work = carded(design);
  const { holdings, cards, uncut, shop, jig, aids } = work;
  const all = design.boards.flatMap(({ board }) => board.mortises.map(({ id }) => `${board.id} ${id}`));
  const onCards = cards.flatMap(({ cuts }) => cuts.map(({ board, mortise }) => `${board} ${mortise}`));
  const told = new Set(uncut.map(({ board, mortise }) => `${board} ${mortise.id}`));
  // every mortise is on one card, or told to be impossible, and never both
  expect([...onCards, ...told].toSorted()).toEqual(all.toSorted());
  for (const { remedy, message } of uncut) expect([remedy, message]).not.toContain('');
  // the order of work cuts what the cards cut
  const steps = orderOfWork(design, holdings, cards).steps.filter(({ kind }) => kind === 'mortise');
  expect(steps.flatMap(({ board, cuts }) => cuts.map((id) => `${board} ${id}`)).toSorted()).toEqual(
    onCards.toSorted(),
  );
  // by the figures of the cards alone every mortise comes out where it belongs
  for (const { where, degrees, along, across, out, sizes } of off(work)) {
    expect(degrees, where).toBeLessThan(PARALLEL_DEG);
    expect(Math.max(along, across, out, sizes), where).toBeLessThan(COPLANAR);
  }
  // and so it does on the solids
  const solids = solidsOf(kernel, design);
  gate(solids);
  const bench = benchOf(solids, speaker('mm'));
  const held = { holdings, aids, jig, shop };
  expect(dryRun(bench, held).map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  const errors = heldMortises(bench, held).filter(({ level }) => level === 'error');
  expect(new Set(errors.map(({ subjects }) => subjects.join(' ')))).toEqual(told);
  // every joint is closed in one step of the glue-up, or told to be stuck; what is closed is clamped, or told to be held by hand
  const { glueUp } = provedGlueUp(solids, shop.glue);
  const up = stagedByClamps(design, glueUp, shop);
  const closed = up.steps.flatMap(({ joints }) => joints.map(({ joint }) => joint));
  const stuck = up.conflicts.flatMap(({ joints }) => joints);
  expect([...closed, ...stuck].toSorted()).toEqual(design.joints.map(({ id }) => id).toSorted());
  const { clamps, unclamped } = clampPlan(design, up, shop.clamps);
  expect(
    new Set([...clamps.flatMap(({ joints }) => joints), ...unclamped.map(({ joint }) => joint)]),
  ).toEqual(new Set(closed));
  met.designs += 1;
  met.stuck += stuck.length;
  met.stages += up.stages.length;
  met.clamps += clamps.length;
  met.mortises += all.length;
  met.uncut += told.size;
  met.marked += holdings.filter(({ marked }) => marked).length;
  met.wedged += holdings.filter(({ near, far }) => near?.wedge ?? far?.wedge).length;
}

test(`for all turned, mitred and compound-lean joints every mortise is held, carded, and cut on the solids as its card says (seed ${SEED})`, async () => {
  await fc.assert(
    fc.asyncProperty(angled, async (wish) => {
      const design = builtAngled(wish);
      if (design instanceof Error) {
        met.refused += 1;
        return;
      }
      await inShop(design);
    }),
    { ...seed(ANGLED), endOnFailure: true },
  );
  expect(met.refused / ANGLED).toBeLessThan(0.2);
  expect(met.marked).toBeGreaterThan(ANGLED / 2);
  expect(met.wedged).toBeGreaterThan(ANGLED / 4);
});

test(`for all stools and frames every mortise is held, carded, and cut on the solids as its card says (seed ${SEED})`, async () => {
  await fc.assert(
    fc.asyncProperty(wishes, async (wish) => {
      const design = built(wish);
      if (design instanceof Error) return;
      await inShop(design);
    }),
    { ...seed(MODELS), endOnFailure: true },
  );
});

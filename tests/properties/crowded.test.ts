import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { benchInShop, benchOf, runChecks } from '../../src/checks/index.js';
import { speaker } from '../../src/length/index.js';
import { builtInShop, clampPlan, setupCards, uncutMortises } from '../../src/shop/index.js';
import { gap, gate } from '../../src/solid/index.js';
import { CLEARANCE_SLACK } from '../../src/tolerances.js';
import { onSolids } from '../checks/sample-design.js';
import { arched, shelves, table } from '../joinery/crowded-designs.js';
import { plainJig } from '../shop/designs.js';
import { type Crowd, crowded, crowds } from './crowded-designs.js';
import { many, SEED, seed } from './seed.js';

const RUNS = many(10, 40);

/** One of each kind, whatever the seed. */
const KNOWN: readonly Crowd[] = [
  { name: 'table', of: {}, make: () => table() },
  { name: 'table with a top', of: {}, make: () => table({ top: true }) },
  { name: 'table, one apron butted', of: {}, make: () => table({ options: { meet: 'butt' } }) },
  { name: 'thin upright', of: {}, make: () => shelves() },
  { name: 'thick upright', of: {}, make: () => shelves({ thick: 30 }) },
  { name: 'two feet', of: {}, make: () => arched() },
];

/** What the layouts, the solids or the bench did wrong: a design that is not refused has none. */
const FAULTS: ReadonlySet<string> = new Set([
  'mortise-breaks-through',
  'mortises-out-of-line',
  'pieces-overlap',
  'tenon-bottoms-out',
  'tenon-end-gap',
  'tenon-too-tight',
  'tenons-meet',
  'volume-differs',
  'shoulder-open',
  'no-glue-up-order',
  'set-up-overlaps',
  'set-up-off-bearing',
  'set-up-face-gone',
  'stops-too-near',
  'cut-off-mortise',
]);

const refused: string[] = [];
const seen = new Map<string, number>();
const count = (what: string) => seen.set(what, (seen.get(what) ?? 0) + 1);
afterAll(() => {
  const ways = [...seen].map(([what, times]) => `${times} ${what}`).join(', ');
  console.log(`seed ${SEED}: ${refused.length} of ${RUNS} crowded designs were refused; ${ways}`);
});

test(`for all crowded designs every mortise keeps its wall, every tenon clears, and the shop can make them (seed ${SEED})`, async () => {
  const shop = builtInShop('mm');
  const jig = plainJig();
  const say = speaker('mm');
  await fc.assert(
    fc.asyncProperty(crowds, async (crowd) => {
      const design = crowded(crowd);
      if (design instanceof Error) {
        refused.push(`${design.message} ${JSON.stringify(crowd.of)}`);
        // a refusal names its joint and ends with what to do
        expect(design.message).toMatch(/^joint .+: [^:]+$/s);
        return;
      }
      await onSolids(design, (solids) => {
        gate(solids);
        for (const { gaveWay = [] } of design.joints) for (const { way } of gaveWay) count(way);
        if (design.joints.some(({ id }) => id.endsWith('.2'))) count('on two patches');
        const bench = benchInShop(benchOf(solids, say), shop, jig);
        const found = runChecks(bench);
        const told = JSON.stringify(crowd.of);
        expect(
          found.filter(({ code }) => FAULTS.has(code)).map(({ message }) => message),
          told,
        ).toEqual([]);
        for (const { joint, tenon, mortises } of bench.tenons) {
          for (const mortise of mortises) {
            expect(mortise.bottomClearance, told).toBeGreaterThanOrEqual(joint.fit.end - CLEARANCE_SLACK);
            expect(mortise.wall, told).toBeGreaterThan(0);
          }
          for (const mitre of [tenon.mitreA, tenon.mitreB]) {
            if (!mitre) continue;
            const mates = design.joints.find(({ id }) => id === mitre.meets)!.tenons;
            const air = mates.map(({ id }) =>
              gap(solids.tenons.get(tenon.id)!.body, solids.tenons.get(id)!.body, 20),
            );
            expect(Math.min(...air), told).toBeGreaterThanOrEqual(mitre.gap - CLEARANCE_SLACK);
          }
        }
        // every mortise stands on a card or its refusal is told
        const { holdings, aids } = bench.held;
        const cards = setupCards({ design, holdings, aids, jig: bench.held.jig, shop });
        const carded = new Set(
          cards.flatMap(({ cuts }) => cuts.map(({ board, mortise }) => `${board} ${mortise}`)),
        );
        const uncut = new Set(
          uncutMortises(design, holdings).map(({ board, mortise }) => `${board} ${mortise.id}`),
        );
        const all = design.boards.flatMap(({ board }) => board.mortises.map(({ id }) => `${board.id} ${id}`));
        expect([...carded, ...uncut].toSorted(), told).toEqual(all.toSorted());
        // glue-up: every joint is closed once
        expect(
          bench.glueUp.glueUp.steps.flatMap(({ joints }) => joints.map(({ joint }) => joint)).toSorted(),
          told,
        ).toEqual(design.joints.map(({ id }) => id).toSorted());
        // and every stage that presses shoulders together has its clamps
        const { clamps } = clampPlan(design, bench.glueUp.glueUp);
        expect(clamps.length, told).toBeGreaterThan(0);
      });
    }),
    { ...seed(RUNS), endOnFailure: true, examples: KNOWN.map((crowd): [Crowd] => [crowd]) },
  );
});

test('crowded designs make way in every way there is, and few are refused', () => {
  expect([...seen.keys()].toSorted()).toEqual(
    ['butt', 'mitre', 'move', 'on two patches', 'shorten', 'stagger'].toSorted(),
  );
  expect(refused.length / RUNS, refused.join('\n')).toBeLessThan(0.3);
});

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import { benchOf, dryRun, failed, heldMortises, runChecks } from '../../src/checks/index.js';
import { speaker } from '../../src/length/index.js';
import { builtInShop, type Holding, holdingsOf, jigAtHand } from '../../src/shop/index.js';
import { type Kernel, solidsOf, startKernel } from '../../src/solid/index.js';
import { off, worst } from '../shop/cut-by-cards.js';
import { carded, made } from '../shop/made.js';
import { mitredFrame, turnedSeat } from '../shop/turned-joints.js';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const SHOP = builtInShop('mm');
const JIG = jigAtHand(made('jig'));
const onBench = (design: Design) => {
  const held = { ...holdingsOf(design, JIG, SHOP), jig: JIG, shop: SHOP };
  return { bench: { ...benchOf(solidsOf(kernel, design), speaker('mm')), held }, held };
};

const legs = (turnDeg: number) =>
  turnedSeat({
    legs: [
      { at: [80, 80], turnDeg },
      { at: [340, 80], turnDeg: 180 - turnDeg },
      { at: [210, 260], turnDeg },
    ],
  });

const DESIGNS: readonly (readonly [string, Design])[] = [
  ...[1, 7, 15, 31, 45, 60, 89, 90, 120, 135, 179, 180].map(
    (turnDeg) => [`legs turned ${turnDeg}° under a seat`, legs(turnDeg)] as const,
  ),
  ['a frame mitred by its outlines', mitredFrame()],
  ['a frame mitred by bevels', mitredFrame({ ends: 'bevel' })],
  [
    'a mitred frame of wide rails with two tenons in each corner',
    mitredFrame({ railWidth: 95, options: { tenons: 2 } }),
  ],
];

describe.each(DESIGNS)('%s', (_, design) => {
  test('is cut on the solids by its set-ups, without a finding', () => {
    const { bench, held } = onBench(design);
    expect(held.holdings).toHaveLength(design.joints.reduce((sum, { tenons }) => sum + 2 * tenons.length, 0));
    expect(dryRun(bench, held)).toEqual([]);
    expect(heldMortises(bench, held).filter(({ level }) => level !== 'note')).toEqual([]);
    expect(failed(runChecks(bench))).toBe(false);
  });

  test('a stranger with the cards and the boards cuts every mortise where it belongs', () => {
    expect(worst(off(carded(design)))).toBeLessThan(1e-6);
  });

  test('read off a rule to a tenth of a mm, no mortise is off by more than a quarter', () => {
    for (const row of off(carded(design), 0.1)) {
      expect(row.along, row.where).toBeLessThanOrEqual(0.25);
      expect(row.across, row.where).toBeLessThanOrEqual(0.25);
      expect(row.degrees, row.where).toBeLessThan(0.1);
    }
  });
});

const turned = ({ marked }: Holding) => marked !== undefined;

test('a seat is marked out by its arrises only where a leg is turned against all its edges', () => {
  expect(
    onBench(legs(31))
      .held.holdings.filter(turned)
      .map(({ board }) => board),
  ).toEqual(['seat', 'seat', 'seat']);
  expect(onBench(legs(90)).held.holdings.filter(turned)).toEqual([]);
  expect(onBench(mitredFrame()).held.holdings.filter(turned)).toEqual([]);
});

test('a 45° line through the corner of a seat is told from that corner: 0 and the depth of the seat', () => {
  const { held } = onBench(turnedSeat({ legs: [{ at: [80, 80], turnDeg: 45 }], length: 420, width: 340 }));
  const [a, b] = held.holdings.find(turned)!.marked!.centreLine;
  expect(a.at).toBeCloseTo(0, 6);
  expect([b.on, b.from]).toEqual(['opposite-edge', 'reference-end']);
  expect(b.at).toBeCloseTo(340, 6);
});

test('mitred ends are cut after they are sawn, plate on the mitre, measured over it from the long point', () => {
  const { held } = onBench(mitredFrame({ railWidth: 70 }));
  for (const { stage, way, along } of held.holdings) {
    expect([stage, way, along.from]).toEqual(['ends cut', 'both rails', 'reference-edge']);
    // half a mitre of 70 mm, and the tenon balanced a little to one side
    expect(along.centre).toBeGreaterThan((70 * Math.SQRT2) / 2);
    expect(along.centre).toBeLessThan(70);
  }
});

describe('a fault in the marks is found on the solids', () => {
  type Line = NonNullable<Holding['marked']>['centreLine'];
  const further = ([a, b]: Line, by: number): Line => [a, { ...b, at: b.at + by }];
  test.each([
    [
      'the centre line turned by a mark',
      'cut-off-mortise',
      (h: Holding) => ({ ...h, marked: { ...h.marked!, centreLine: further(h.marked!.centreLine, 3) } }),
    ],
    [
      'the guide turned by a mark',
      'set-up-overlaps',
      (h: Holding) => ({ ...h, marked: { ...h.marked!, guideEdge: further(h.marked!.guideEdge!, 1) } }),
    ],
    [
      'the middle told from the wrong end',
      'cut-off-mortise',
      (h: Holding) => ({ ...h, along: { ...h.along, centre: h.along.centre + 0.2 } }),
    ],
    [
      'a mark on a face that is not there',
      'set-up-face-gone',
      (h: Holding) => ({
        ...h,
        marked: {
          centreLine: [{ ...h.marked!.centreLine[0], on: 'edge-9' }, h.marked!.centreLine[1]] as Line,
        },
      }),
    ],
  ])('%s', (_, code, spoil) => {
    const { bench, held } = onBench(turnedSeat({ legs: [{ at: [120, 130], turnDeg: 31 }] }));
    const spoilt = { ...held, holdings: held.holdings.map((h) => (turned(h) ? spoil(h) : h)) };
    expect(dryRun(bench, spoilt).map((one) => one.code)).toContain(code);
  });
});

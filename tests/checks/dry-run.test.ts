import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import { assemble, type Design } from '../../src/assembly/index.js';
import {
  type Bench,
  benchOf,
  dryRun,
  type Finding,
  type Held,
  heldMortises,
} from '../../src/checks/index.js';
import { add, moved, scale } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { readParameters } from '../../src/model/index.js';
import { builtInShop, type Holding, holdingsOf, jigAtHand, type Shop } from '../../src/shop/index.js';
import { type Kernel, solidsOf, startKernel } from '../../src/solid/index.js';
import { many } from '../properties/seed.js';

type Raw = Readonly<Record<string, number | string>>;

const SHOP: Shop = builtInShop('mm');
const jigOf = (raw: Raw) => jigAtHand(jig.build(readParameters(jig, raw, 'mm')));
const JIG = jigOf({});
/** Reaches not so far as the underside of a tread from its end, as the usual one does. */
const NARROW = jigOf({ workMax: 60 });

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});
afterAll(() => kernel.dispose());

const onBench = (design: Design, held = JIG, shop = SHOP): { bench: Bench; held: Held } => ({
  bench: benchOf(solidsOf(kernel, design), speaker('mm')),
  held: { ...holdingsOf(design, held, shop), jig: held, shop },
});
const stoolOf = (raw: Raw = {}) => stool.build(readParameters(stool, raw, 'mm'));
const codes = (findings: readonly Finding[]) => [...new Set(findings.map(({ code }) => code))].sort();

test.each([
  ['a stool with one tread', stoolOf()],
  ['an upright stool', stoolOf({ rake: 0 })],
  ['a stool raked 20°', stoolOf({ rake: 20 })],
  ['a stool without taper', stoolOf({ taper: 0 })],
  ['an upright stool without taper', stoolOf({ rake: 0, taper: 0 })],
  ['a stool with two treads', stoolOf({ treads: 2 })],
  ['a stool with two treads, raked 20°, without taper', stoolOf({ treads: 2, rake: 20, taper: 0 })],
  ['a stool whose steps are sawn from one board', stoolOf({ treads: 2, steppedSide: 'one-board' })],
  ['an upright stool with two treads', stoolOf({ treads: 2, rake: 0 })],
  ['a frame', frameModel.build(readParameters(frameModel, {}, 'mm'))],
  [
    'a frame with two tenons in each corner',
    frameModel.build(readParameters(frameModel, { tenons: 2, railWidth: 120 }, 'mm')),
  ],
])('%s passes the dry run on a short jig and on a wide one', (_, design) => {
  for (const held of [JIG, NARROW]) {
    const on = onBench(design, held);
    expect(on.held.holdings.length).toBeGreaterThan(0);
    expect(dryRun(on.bench, on.held)).toEqual([]);
  }
});

test.each([
  // round where it runs along the guide; 75 to it and to both stops
  [{ near: 60 }, 75, 75],
  [{ far: 58 }, 58, 75],
  [{ near: 55, sides: 62 }, 75, 62],
  [{ near: 55, far: 66, sides: 62 }, 66, 62],
])(
  'a router base with flats %j runs along its guide and between its stops to where the mortise is',
  (flats, guide, half) => {
    const shop: Shop = {
      ...SHOP,
      router: { ...SHOP.router, base: { shape: 'round with flats', along: 150, across: 150, flats } },
    };
    const { bench, held } = onBench(stoolOf(), NARROW, shop);
    expect(dryRun(bench, held)).toEqual([]);
    const own = held.holdings.filter(guided);
    expect(own.length).toBeGreaterThan(2);
    for (const { guide: set, stopDistance, mortise } of own) {
      expect(set!.offset).toBe(guide);
      expect(stopDistance).toBeCloseTo(mortise.length / 2 + half - mortise.width / 2, 9);
    }
    // set as for the whole circle, it would cut off the mortise by what the flats take off, or press the base into the guide
    if (guide === 75 && half === 75) return;
    const round = onBench(stoolOf(), NARROW).held;
    const mixed = { ...held, holdings: round.holdings, aids: [...held.aids, ...round.aids] };
    expect(codes(dryRun(bench, mixed)).length).toBeGreaterThan(0);
  },
);

test('a mortise along the grain is cut from the square blank and comes out as the finished one', () => {
  const bare = stoolOf().boards.map(({ board, place }) => ({ board: { ...board, mortises: [] }, place }));
  const design = assemble({
    name: 'along',
    title: 'Along',
    cutter: 8,
    boards: bare,
    joints: ['left-side', 'right-side'].map((b) => ({
      a: 'stretcher',
      b,
      options: { cutter: 8, axis: 'along a' as const },
    })),
  });
  const { bench, held } = onBench(design);
  expect(held.holdings.map(({ board }) => board)).toEqual(['stretcher', 'stretcher']);
  expect(dryRun(bench, held)).toEqual([]);
  const told = heldMortises(bench, held).filter(({ code }) => code === 'mortise-without-mouth');
  expect(told.map(({ subjects }) => subjects[0])).toEqual(['left-side', 'right-side']);
  for (const { message } of told) expect(message).toContain('10');
});

test('a mortise beside a riser is told with the limit it breaks and what would cure it', () => {
  const { bench, held } = onBench(stoolOf({ treads: 2, steppedSide: 'one-board' }));
  const told = heldMortises(bench, held).filter(({ level }) => level === 'error');
  expect(codes(told)).toEqual(['cannot-be-cut-plate-meets-work']);
  expect(told.map(({ subjects }) => subjects[1])).toEqual([
    'lower-tread/left-side/2',
    'lower-tread/right-side/2',
  ]);
  for (const { measured, limit, remedy } of told) {
    expect(measured).toBeGreaterThan(limit);
    expect(remedy).toContain('glue');
  }
});

test('a tread that only a longer jig could fence is noted once, with the missing reach', () => {
  const { bench, held } = onBench(stoolOf(), NARROW);
  const [note, ...more] = heldMortises(bench, held).filter(
    ({ code }) => code === 'held-another-way-rail-reach',
  );
  expect(more).toEqual([]);
  expect(note!.subjects).toHaveLength(1 + 4);
  expect(note!.limit).toBeCloseTo(31, 9);
  const wide = onBench(stoolOf());
  expect(heldMortises(wide.bench, wide.held)).toEqual([]);
});

/** One fault put into the holdings of a sound design. */
interface Fault {
  readonly what: string;
  readonly design: Design;
  readonly jig?: typeof JIG;
  readonly pick: (holding: Holding) => boolean;
  readonly spoil: (holding: Holding) => Holding;
  readonly code: string;
}

const stretcher = (holding: Holding) => holding.board === 'stretcher';
const raked = (holding: Holding) => holding.mortise.face === 'top';
const fenced = (holding: Holding) => holding.way === 'one rail';
const guided = (holding: Holding) => holding.way === 'guide board';
const framed = frameModel.build(readParameters(frameModel, {}, 'mm'));

const FAULTS: readonly Fault[] = [
  {
    what: 'a rail set 0.1 mm too far from the cutter',
    design: stoolOf(),
    pick: stretcher,
    spoil: (h) => ({ ...h, far: { ...h.far!, toRail: h.far!.toRail + 0.1 } }),
    code: 'set-up-off-bearing',
  },
  {
    what: 'a rail set 0.1 mm into the work',
    design: stoolOf(),
    pick: stretcher,
    spoil: (h) => ({ ...h, near: { ...h.near!, toRail: h.near!.toRail - 0.1 } }),
    code: 'set-up-overlaps',
  },
  {
    what: 'a fence taken 0.1 mm off',
    design: stoolOf(),
    jig: JIG,
    pick: fenced,
    spoil: (h) => ({
      ...h,
      ...(h.near ? { near: { ...h.near, toFace: h.near.toFace + 0.1, toRail: h.near.toRail + 0.1 } } : {}),
      ...(h.far ? { far: { ...h.far, toFace: h.far.toFace + 0.1, toRail: h.far.toRail + 0.1 } } : {}),
    }),
    code: 'cut-off-mortise',
  },
  {
    what: 'stops 0.1 mm too far apart',
    design: stoolOf(),
    pick: stretcher,
    spoil: (h) => ({ ...h, stopDistance: h.stopDistance + 0.05 }),
    code: 'cut-off-mortise',
  },
  {
    what: 'a centre line marked 0.1 mm off',
    design: stoolOf(),
    pick: raked,
    spoil: (h) => ({ ...h, along: { ...h.along, centre: h.along.centre + 0.1 } }),
    code: 'cut-off-mortise',
  },
  {
    what: 'a centre line across marked 0.1 mm off',
    design: stoolOf(),
    pick: guided,
    spoil: (h) => ({ ...h, across: { ...h.across!, centre: h.across!.centre - 0.1 } }),
    code: 'cut-off-mortise',
  },
  {
    what: 'the depth block of another mortise',
    design: stoolOf(),
    pick: raked,
    spoil: (h) => ({ ...h, depthBlock: 'depth-block-14' }),
    code: 'cut-off-mortise',
  },
  {
    what: 'a wedge left out',
    design: stoolOf(),
    pick: raked,
    spoil: (h) => {
      const { wedge: _, ...bare } = h.near!;
      return { ...h, near: bare };
    },
    code: 'set-up-off-bearing',
  },
  {
    what: 'a wedge upside down',
    design: stoolOf(),
    pick: raked,
    spoil: (h) => {
      const { near, far } = h;
      const at = near!.wedge!.place;
      // half a turn about its own z, through the middle of its face
      const across = add(scale(at.x, 150), scale(at.y, 45));
      const turned = {
        origin: add(at.origin, across),
        x: scale(at.x, -1),
        y: scale(at.y, -1),
        z: at.z,
      };
      return { ...h, near: { ...near!, wedge: { ...near!.wedge!, place: turned } }, far: far! };
    },
    code: 'set-up-overlaps',
  },
  {
    what: 'support blocks left out',
    design: stoolOf(),
    pick: stretcher,
    spoil: (h) => ({ ...h, supports: [] }),
    code: 'plate-tips',
  },
  {
    what: 'a support block that stands proud of the mouth',
    design: stoolOf(),
    pick: stretcher,
    spoil: (h) => ({
      ...h,
      supports: h.supports.map((use) => ({ ...use, place: moved(use.place, scale(h.mortise.at.z, 1)) })),
    }),
    code: 'set-up-overlaps',
  },
  {
    what: 'a horn left off',
    design: framed,
    pick: (h) => h.horn !== undefined,
    spoil: ({ horn: _, ...h }) => h,
    code: 'plate-tips',
  },
  {
    what: 'a side top cut before its bevel is there',
    design: stoolOf(),
    pick: raked,
    spoil: (h) => ({ ...h, stage: 'milled blank' }),
    code: 'set-up-face-gone',
  },
  {
    what: 'a tapered side marked from an edge that is gone',
    design: stoolOf(),
    pick: raked,
    spoil: (h) => ({ ...h, stage: 'outline cut' }),
    code: 'set-up-face-gone',
  },
  {
    what: 'a guide board clamped 0.1 mm off',
    design: stoolOf(),
    pick: guided,
    spoil: (h) => ({
      ...h,
      guide: { ...h.guide!, place: moved(h.guide!.place, scale(h.guide!.place.y, 0.1)) },
    }),
    code: 'set-up-off-bearing',
  },
  {
    what: 'a pair of rail distances exchanged on work that lies out of the middle',
    design: stoolOf(),
    pick: raked,
    spoil: (h) => ({
      ...h,
      near: { ...h.near!, toFace: h.far!.toFace, toRail: h.far!.toRail },
      far: { ...h.far!, toFace: h.near!.toFace, toRail: h.near!.toRail },
    }),
    code: 'cut-off-mortise',
  },
  {
    what: 'a centre line measured from the opposite edge',
    design: stoolOf(),
    pick: raked,
    spoil: (h) => ({ ...h, along: { ...h.along, from: 'opposite-edge' } }),
    code: 'cut-off-mortise',
  },
  {
    what: 'a pair of stops set for the bare router under a jig',
    design: stoolOf(),
    pick: stretcher,
    spoil: (h) => ({ ...h, stopDistance: h.mortise.length / 2 + 150 / 2 - h.mortise.width / 2 }),
    code: 'stops-too-near',
  },
  {
    what: 'a support block pushed 1 mm out against a rail',
    design: stoolOf(),
    pick: stretcher,
    spoil: (h) => ({
      ...h,
      supports: h.supports.map((use) => ({ ...use, place: moved(use.place, scale(h.mortise.at.y, 1)) })),
    }),
    code: 'set-up-overlaps',
  },
  {
    what: 'a horn left on the other end',
    design: framed,
    pick: (h) => h.horn?.end === 'reference-end',
    spoil: (h) => ({ ...h, horn: { ...h.horn!, end: 'opposite-end' } }),
    code: 'set-up-face-gone',
  },
];

test.each(FAULTS.map((fault) => [fault.what, fault] as const))('%s is found in the dry run', (_, fault) => {
  const { bench, held } = onBench(fault.design, fault.jig ?? JIG);
  const picked = held.holdings.filter(fault.pick);
  expect(picked.length).toBeGreaterThan(0);
  const sound = dryRun(bench, { ...held, holdings: picked });
  expect(sound).toEqual([]);
  const found = dryRun(bench, { ...held, holdings: picked.map(fault.spoil) });
  expect(codes(found)).toContain(fault.code);
  // told for every mortise that has it
  expect(found.filter(({ code }) => code === fault.code).length).toBeGreaterThanOrEqual(picked.length);
  for (const { level, basis } of found) {
    expect(level).toBe('error');
    expect(basis).not.toBe('');
  }
});

test('a depth block planed 0.1 mm too thin is found, though the set-up was tried with the right one before', () => {
  const { bench, held } = onBench(stoolOf());
  expect(dryRun(bench, held)).toEqual([]);
  const aids = held.aids.map((aid) => {
    const { blank } = aid.board;
    if (!aid.board.id.startsWith('depth-block')) return aid;
    return { ...aid, board: { ...aid.board, blank: { ...blank, thickness: blank.thickness - 0.1 } } };
  });
  const found = dryRun(bench, { ...held, aids });
  expect(found.filter(({ code }) => code === 'cut-off-mortise')).toHaveLength(held.holdings.length);
});

test('for all sizes of stool and jig nothing of a set-up cuts into anything, and every cut is its mortise', () => {
  fc.assert(
    fc.property(
      fc.record({
        rake: fc.double({ min: 0, max: 20, noNaN: true }),
        taper: fc.double({ min: 0, max: 8, noNaN: true }),
        treads: fc.constantFrom(1, 2),
        stretcherThickness: fc.integer({ min: 15, max: 35 }),
        sideThickness: fc.integer({ min: 20, max: 35 }),
        treadTenons: fc.integer({ min: 1, max: 2 }),
        setback: fc.integer({ min: 0, max: 20 }),
      }),
      fc.record({
        workMin: fc.integer({ min: 15, max: 25 }),
        workMax: fc.integer({ min: 50, max: 110 }),
        railHeight: fc.integer({ min: 35, max: 60 }),
      }),
      (sizes, jigSizes) => {
        const { bench, held } = onBench(stoolOf(sizes), jigOf(jigSizes));
        expect(dryRun(bench, held)).toEqual([]);
      },
    ),
    { numRuns: many(4, 10) },
  );
});

test('a template guides a bush from one end of its window to the other', () => {
  // 60 mm rails are too thick for this jig, and their edges too narrow for a guide board
  const thick = frameModel.build(
    readParameters(frameModel, { thickness: 60, railWidth: 100, cutter: 8 }, 'mm'),
  );
  const narrow = jigOf({ workMin: 20, workMax: 40 });
  const { bench, held } = onBench(thick, narrow);
  const windows = held.holdings.filter(({ way }) => way === 'windowed template');
  expect(windows.length).toBeGreaterThan(0);
  expect(dryRun(bench, held)).toEqual([]);
  const wider = held.holdings.map((h) =>
    h.window ? { ...h, window: { ...h.window, length: h.window.length + 0.2 } } : h,
  );
  expect(codes(dryRun(bench, { ...held, holdings: wider }))).toContain('cut-off-mortise');
});

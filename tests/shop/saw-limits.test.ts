import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { speaker } from '../../src/length/index.js';
import {
  builtInShop,
  crosscutLayouts,
  cutList,
  cutsTooShort,
  gathered,
  type LayoutPart,
  layoutParts,
  lumberLayouts,
  outlineTemplates,
  padBoard,
  type Shop,
  sheetLayouts,
  stockPlan,
  tenonSchedule,
  tenonStrips,
  testBlanks,
  woodBill,
} from '../../src/shop/index.js';
import { sheetNames } from '../../src/tables/index.js';
import { sampledDesigns } from '../properties/sampled-designs.js';
import { many, SEED } from '../properties/seed.js';
import { aShop } from './a-shop.js';
import { carded, made } from './made.js';
import { replayCuts } from './replay-cuts.js';

const say = speaker('mm');

const part = (given: Partial<LayoutPart>): LayoutPart => ({
  mark: 'P',
  name: 'piece',
  material: 'white ash',
  length: 80,
  width: 40,
  thickness: 20,
  scrap: false,
  ...given,
});

const shop: Shop = {
  ...aShop,
  sawKerf: 3,
  shortest: { saw: 250, planer: 320 },
  sheets: [{ name: 'birch plywood', length: 1525, width: 1525, thickness: 12 }],
  lumber: [{ thickness: 52, width: 400, length: 3000, count: 50 }],
};

describe('pieces shorter than the machines may be given', () => {
  test('share a length that is planed and ripped whole: 5 of 80 and 5 kerfs of 3, and 250 for the saw at the last cut', () => {
    const { parts, lengths } = gathered(
      Array.from({ length: 5 }, (_, i) => part({ mark: `P.${i + 1}` })),
      shop,
      'M',
    );
    expect(lengths).toHaveLength(1);
    expect(lengths[0]!.length).toBe(4 * (80 + 3) + 250);
    expect(parts).toEqual(lengths);
  });

  test('one alone stands in a length both machines take', () => {
    expect(gathered([part({})], shop, 'M').lengths[0]!.length).toBe(320);
    expect(gathered([part({})], { ...shop, shortest: {} }, 'M').lengths[0]!.length).toBe(300);
  });

  test('long pieces and sheet goods are left as they are', () => {
    const parts = [part({ length: 320 }), part({ material: 'birch plywood' })];
    expect(gathered(parts, shop, 'M')).toEqual({ parts, lengths: [] });
  });

  test('are crosscut off one after the other, and the last offcut is what was held', () => {
    const { lengths } = gathered([part({ mark: 'A', length: 100 }), part({ mark: 'B' })], shop, 'M');
    const [layout] = crosscutLayouts(lengths, shop, say);
    const left = replayCuts(layout!.plan.pieces[0]!, 3);
    expect(left.get('A')!.length).toBe(100);
    expect(left.get('B')!.length).toBe(80);
    expect(left.get('Z1')!.length).toBeCloseTo(103 + 250 - 186, 9);
  });

  test('cost the wood that is left over of their length', () => {
    const rows = [
      {
        material: 'white ash',
        kind: 'board',
        count: 1,
        blankVolume: 80 * 40 * 20,
        rough: { allowances: [] },
      },
    ] as unknown as Parameters<typeof woodBill>[0];
    const { lengths } = gathered([part({})], shop, 'M');
    expect(woodBill(rows, lengths, 0)[0]!.total.volumeMm3).toBeCloseTo(320 * 40 * 20, 6);
  });
});

const size = (most: number) => fc.integer({ min: 20, max: most });

test('no cut of a random list breaks the limits of its saw, and every piece comes off it in its size', () => {
  let cuts = 0;
  fc.assert(
    fc.property(
      fc.array(fc.tuple(size(900), fc.oneof(fc.constantFrom(40, 60), size(180)), fc.constantFrom(12, 20)), {
        minLength: 1,
        maxLength: 14,
      }),
      fc.integer({ min: 100, max: 450 }),
      fc.integer({ min: 100, max: 450 }),
      (sizes, saw, planer) => {
        const own: Shop = { ...shop, shortest: { saw, planer } };
        const all = sizes.map(([length, width, thickness], i) =>
          part({ mark: `P${i + 1}`, length, width, thickness }),
        );
        const { parts, lengths } = gathered(all, own, 'M');
        const layouts = [...lumberLayouts(parts, own, say).layouts, ...crosscutLayouts(lengths, own, say)];
        for (const { plan } of layouts) {
          expect(plan.unplaced).toEqual([]);
          expect(cutsTooShort(plan, saw)).toEqual([]);
          cuts += plan.pieces.reduce((sum, piece) => sum + piece.cuts.length, 0);
        }
        // every part a machine planes or rips is as long as both want it
        for (const one of parts) expect(one.length).toBeGreaterThanOrEqual(Math.max(saw, planer));
        const sawn = new Map(
          layouts.flatMap(({ plan }) => plan.pieces.flatMap((piece) => [...replayCuts(piece, 3)])),
        );
        for (const one of all) {
          expect(sawn.get(one.mark)!.length).toBeCloseTo(one.length, 6);
          expect(sawn.get(one.mark)!.width).toBeCloseTo(one.width, 6);
        }
      },
    ),
    { numRuns: 300 },
  );
  expect(cuts).toBeGreaterThan(1000);
});

test(`no saw list of a random design breaks the limits of its shop, and every piece comes off it in its size (seed ${SEED})`, () => {
  const met = { designs: 0, models: new Set<string>(), cuts: 0, short: 0 };
  // lumber enough for any of them
  const lumber = [32, 50, 80].map((thickness) => ({ thickness, width: 150, length: 3000, count: 60 }));
  const own: Shop = { ...builtInShop('mm'), lumber };
  const kerf = own.sawKerf!;
  const jig = { design: made('jig'), name: 'jig', wish: { model: 'jig' } };
  const pads = [0, 3, 10].map((lean) => ({
    board: padBoard(lean, 'white ash'),
    kind: 'clamp pad' as const,
    purpose: 'pad',
    count: 8,
    handed: false,
  }));
  for (const { design, name, wish } of [jig, ...sampledDesigns(many(20, 300), SEED)]) {
    if (!design) continue;
    const { cards, aids } = carded(design, own);
    const boards = design.boards.map(({ board }) => board);
    const rows = cutList({
      design,
      shop: own,
      // only masses are worked out from them
      volumes: new Map(boards.map(({ id }) => [id, 0])),
      aids: [...aids, ...pads],
      templates: outlineTemplates(boards, own),
      testBlanks: testBlanks(cards, boards, own),
      strips: tenonStrips(tenonSchedule(design, own, say), own),
    });
    const { layouts, parts, lengths, gluedUp } = stockPlan(rows, own, say);
    const left = new Map<string, { length: number; width: number }>();
    const marks = layoutParts(rows).map(({ mark }) => mark);
    expect(marks, name).toEqual([...new Set(marks)]);
    for (const { plan, notes, material } of layouts) {
      expect(plan.unplaced, name).toEqual([]);
      const short = cutsTooShort(plan, own.shortest.saw!);
      // a sheet is not planed: what the saw may not be given is told to be cut by hand
      if (sheetNames.includes(material))
        expect(
          notes.filter((note) => note.includes('hand saw')),
          name,
        ).toHaveLength(short.length);
      else expect(short, name).toEqual([]);
      met.short += short.length;
      for (const piece of plan.pieces) {
        met.cuts += piece.cuts.length;
        for (const [mark, rect] of replayCuts(piece, kerf)) left.set(mark, rect);
      }
    }
    // what is planed or ripped is as long as both machines want it
    const machined = [...parts, ...lengths].filter(({ material }) => !sheetNames.includes(material));
    for (const { length } of machined)
      expect(length, name).toBeGreaterThanOrEqual(own.shortest.planer! - 1e-6);
    // and every piece of the list comes off: a wide one in strips, scrap that is long enough as it was found
    for (const { mark, length, width, scrap } of layoutParts(rows)) {
      if (gluedUp.has(mark) || (scrap && length >= own.shortest.planer!)) continue;
      const sawn = left.get(mark);
      expect(sawn, `${name}: ${mark}`).toBeDefined();
      const sizes = (of: { length: number; width: number }) =>
        [of.length, of.width].toSorted((a, b) => a - b);
      expect(sizes(sawn!)[0], name).toBeCloseTo(sizes({ length, width })[0]!, 6);
      expect(sizes(sawn!)[1], name).toBeCloseTo(sizes({ length, width })[1]!, 6);
    }
    met.designs += 1;
    met.models.add(wish.model);
  }
  console.log(`seed ${SEED}: ${JSON.stringify({ ...met, models: [...met.models] })}`);
  expect(met.designs).toBeGreaterThan(many(10, 200));
  expect([...met.models].toSorted()).toEqual(['frame', 'jig', 'stool']);
});

test('a rip on a sheet that runs too short for the saw is told with another way to cut it', () => {
  const small = part({ mark: 'S', material: 'birch plywood', length: 60, width: 200, thickness: 12 });
  const tiny = part({ mark: 'T', material: 'birch plywood', length: 60, width: 150, thickness: 12 });
  const [layout] = sheetLayouts([small, tiny], { ...shop, shortest: { saw: 400 } }, say);
  const short = cutsTooShort(layout!.plan, 400);
  expect(layout!.notes.filter((note) => note.includes('hand saw'))).toHaveLength(short.length);
});

import { describe, expect, test } from 'vitest';
import { makeBoard, stockVolume } from '../../src/board/index.js';
import { speaker } from '../../src/length/index.js';
import {
  cutList,
  type LayoutPart,
  layoutParts,
  lumberLayouts,
  outlineTemplates,
  type Shop,
  sheetLayouts,
} from '../../src/shop/index.js';
import { aShop, without } from './a-shop.js';
import { plainJig, stoolWith } from './designs.js';
import { replayCuts } from './replay-cuts.js';

const say = speaker('mm');

const part = (given: Partial<LayoutPart>): LayoutPart => ({
  mark: 'P',
  name: 'part',
  material: 'birch plywood',
  length: 300,
  width: 200,
  thickness: 12,
  scrap: false,
  ...given,
});

const sheetShop: Shop = {
  ...aShop,
  sheets: [{ name: 'birch plywood', length: 1525, width: 1525, thickness: 11.7 }],
};

describe('sheets', () => {
  test('the plate of the jig is laid on the sheet at hand and can be sawn from it', () => {
    const jig = plainJig();
    const volumes = new Map(jig.boards.map(({ board }) => [board.id, stockVolume(board).volume]));
    const parts = layoutParts(cutList({ design: jig, shop: sheetShop, volumes }));
    const [layout] = sheetLayouts(parts, sheetShop, say);
    expect(layout).toMatchObject({ verdict: 'passed', grainLocked: true, thickness: 11.7 });
    expect([...replayCuts(layout!.plan.pieces[0]!, 3).keys()]).toContain('PL');
  });

  test('a sheet thinner than the parts are drawn is told, one that measures the same is not', () => {
    const notes = (thickness: number) => sheetLayouts([part({ thickness })], sheetShop, say)[0]!.notes.join();
    expect(notes(12)).toContain('drawn 12 mm thick, the sheet measures 11.7 mm');
    expect(notes(11.7)).not.toContain('drawn');
  });

  test('an unknown sheet or kerf is assumed, told, and not verified', () => {
    const [layout] = sheetLayouts([part({})], without('sawKerf'), say);
    expect(layout!.verdict).toBe('not verified');
    expect(layout!.notes.filter((note) => note.includes('assumed'))).toHaveLength(2);
  });

  test('plywood keeps its grain, fibreboard may be turned', () => {
    const strip = { length: 200, width: 1400, thickness: 11.7 };
    const narrow: Shop = {
      ...aShop,
      sheets: ['birch plywood', 'medium density fibreboard'].map((name) => ({
        name,
        length: 1500,
        width: 600,
        thickness: 11.7,
      })),
    };
    const [ply, mdf] = sheetLayouts(
      [part(strip), part({ ...strip, material: 'medium density fibreboard' })],
      narrow,
      say,
    );
    expect(ply!.plan.unplaced).toHaveLength(1);
    expect(ply!.notes.join()).toContain('fits no sheet: one of at least 220.0 mm × 1420.0 mm is needed');
    expect(mdf!.plan.pieces[0]!.parts[0]!.turned).toBe(true);
  });
});

describe('lumber', () => {
  const lumber: Shop = {
    ...aShop,
    lumber: [
      { thickness: 26, width: 150, length: 2000, count: 1 },
      { thickness: 52, width: 150, length: 2000, count: 1 },
    ],
  };
  const rail = (given: Partial<LayoutPart>) =>
    part({ material: 'white ash', length: 600, width: 60, thickness: 24, ...given });

  test('a part goes onto the thinnest board that is thick enough', () => {
    const { layouts } = lumberLayouts(
      [rail({ mark: 'A' }), rail({ mark: 'B', thickness: 26.1 })],
      lumber,
      say,
    );
    expect(layouts.map(({ thickness, parts }) => [thickness, parts[0]!.mark])).toEqual([
      [26, 'A'],
      [52, 'B'],
    ]);
  });

  test('a board wider than the lumber is glued up from strips that make up its width and a joint between each', () => {
    const { layouts } = lumberLayouts([rail({ mark: 'T', width: 250 })], lumber, say);
    const strips = layouts[0]!.parts;
    expect(strips.map(({ mark }) => mark)).toEqual(['T/1', 'T/2']);
    expect(strips.reduce((sum, { width }) => sum + width, 0)).toBeCloseTo(250 + 3, 9);
    expect(layouts[0]!.notes.join()).toContain('glued up from 2 strips 126.5 mm wide');
  });

  test('a part too long for all of it is reported with the length that would do', () => {
    const { layouts } = lumberLayouts([rail({ length: 1951 })], lumber, say);
    expect(layouts[0]!.plan.unplaced[0]!.needed.length).toBe(2001);
    expect(layouts[0]!.notes.join()).toContain('get lumber at least 2001.0 mm long');
    expect(lumberLayouts([rail({ length: 1950 })], lumber, say).layouts[0]!.plan.unplaced).toEqual([]);
  });

  test('boards of one wood leave none of the lumber they use to the next', () => {
    const long = { length: 1900, width: 140 };
    const { layouts } = lumberLayouts(
      [rail({ mark: 'A', ...long }), rail({ mark: 'B', material: 'hard maple', ...long })],
      lumber,
      say,
    );
    expect(layouts.map(({ plan }) => plan.pieces.length)).toEqual([1, 0]);
    expect(layouts[1]!.plan.unplaced).toHaveLength(1);
  });

  test('without any, it is told how much to buy: 600 × 60 × 24 twice and a fifth more is 2.07 dm³', () => {
    const { toBuy } = lumberLayouts([rail({ mark: 'A' }), rail({ mark: 'B' })], aShop, say);
    expect(toBuy).toHaveLength(1);
    expect(toBuy[0]).toMatchObject({ thickness: 24, widest: 60, longest: 600, count: 2 });
    expect(toBuy[0]!.m3).toBeCloseTo(2 * 0.6 * 0.06 * 0.024 * 1.2, 12);
  });
});

describe('outline templates', () => {
  test('left and right sides share one, a square tread without an opening needs none', () => {
    const boards = stoolWith({ treads: 2, handOpening: false }).boards.map(({ board }) => board);
    const templates = outlineTemplates(boards, aShop);
    expect(templates.map((template) => template.boards)).toEqual([
      ['left-side', 'right-side'],
      ['left-step', 'right-step'],
    ]);
  });

  test('stand 50 mm beyond the ends and 20 mm beyond the edges', () => {
    const round = makeBoard({
      id: 'disc',
      blank: { length: 300, width: 100, thickness: 20 },
      openings: [
        {
          id: 'slot',
          outline: [
            { x: 100, y: 50, bulge: 1 },
            { x: 140, y: 50, bulge: 1 },
          ],
        },
      ],
    });
    expect(outlineTemplates([round], aShop)[0]).toMatchObject({ length: 400, width: 140, thickness: 6 });
  });
});

import { expect, test } from 'vitest';
import { parse } from 'yaml';
import * as z from 'zod';
import { InputError, type Misplaced } from '../../src/errors.js';
import { speaker } from '../../src/length/index.js';
import { optionName } from '../../src/model/index.js';
import { falling, rising, USUAL_SEASON } from '../../src/movement/index.js';
import { shopFile } from '../../src/shop/at-hand/shop-file.js';
import { builtInShop, readShop, seasonOf, shopExample } from '../../src/shop/index.js';

const BASE = { router: { base: { shape: 'round', along: 150 } } };

const read = (more: object, units: 'mm' | 'in' = 'mm') => readShop({ ...BASE, ...more }, 'shop.yaml', units);

const refusal = (raw: unknown): string => {
  try {
    readShop(raw, 'shop.yaml', 'mm');
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  return 'read';
};

test.each(['mm', 'in'] as const)(
  'the documented example is the built-in shop, word for word: %s',
  (units) => {
    const shop = builtInShop(units);
    // written in inches and read in a run of mm: the file says its own units
    for (const run of ['mm', 'in'] as const)
      expect(readShop(parse(shopExample(units)), shop.name, run)).toEqual({ ...shop, units: run });
  },
);

test('a shop with every value there is survives being written and read', () => {
  const full = {
    ...builtInShop('mm'),
    name: 'shop.yaml',
    router: { ...builtInShop('mm').router, eccentricity: 0.15 },
    cutters: [
      {
        nominal: 8,
        diameter: 7.98,
        cuttingLength: 32,
        overallLength: 80,
        shank: 8,
        slotInFace: 8.05,
        slotInEnd: 8.1,
      },
    ],
    jig: { plateThickness: 9, workMin: 15 },
    place: { climate: 'damp-coast' },
    wood: { sawn: 'quarter' as const, gluedAt: 9 },
    jointStiffness: 8000,
  };
  expect(readShop(parse(shopExample('mm', full)), 'shop.yaml', 'mm')).toEqual(full);
});

test('the example tells the help of every name there is', () => {
  const text = shopExample('mm');
  // the comments without their marks, in one line
  const said = text.replace(/\n *#? */g, ' ').replace(/\s+/g, ' ');
  const names: string[] = [];
  const walk = (schema: z.ZodType): void => {
    const inner = schema instanceof z.ZodOptional ? (schema.unwrap() as z.ZodType) : schema;
    if (inner instanceof z.ZodArray) walk(inner.element as z.ZodType);
    if (!(inner instanceof z.ZodObject)) return;
    for (const [name, field] of Object.entries(inner.shape) as [string, z.ZodType][]) {
      names.push(name);
      const { help } = field.meta() as { help: string };
      expect(said).toContain(help);
      expect(text).toMatch(new RegExp(`(^|[ #{])${optionName(name)}:`, 'm'));
      walk(field);
    }
  };
  walk(shopFile);
  expect(names.length).toBeGreaterThan(40);
});

test('what a file leaves out stays unknown: nothing comes from the built-in shop', () => {
  const shop = read({ cutters: [{ nominal: 8 }] });
  expect(shop.cutters).toEqual([{ nominal: 8 }]);
  expect(shop.router).toEqual({ base: { shape: 'round', along: 150, across: 150 } });
  expect(shop).not.toHaveProperty('sawKerf');
  expect(shop).not.toHaveProperty('glue');
  expect([shop.bushes, shop.sheets, shop.lumber, shop.clamps]).toEqual([[], [], [], []]);
});

test('lengths are in the units of the file, then of the run, and may carry their own', () => {
  expect(read({ sawKerf: '1/8', router: { base: { along: 6 } } }, 'in').sawKerf).toBe(3.175);
  expect(read({ units: 'mm', sawKerf: 3 }, 'in').sawKerf).toBe(3);
  expect(read({ 'saw-kerf': '1/8 in' }).sawKerf).toBe(3.175);
  expect(read({ cutters: [{ nominal: '5/16 in', shank: '1/4"' }] }).cutters).toEqual([
    { nominal: 7.9375, shank: 6.35 },
  ]);
});

test('an empty list and an empty value count as left out', () => {
  const shop = readShop(
    parse('router: { base: { along: 150 } }\ncutters:\nsaw-kerf:\nshortest:\n'),
    'f',
    'mm',
  );
  expect(shop.cutters).toEqual([]);
  expect(shop.shortest).toEqual({});
  expect(shop).not.toHaveProperty('sawKerf');
});

test.each([
  [{ ...BASE, cuters: [] }, /shop\.yaml: there is no 'cuters' here: did you mean cutters\?/],
  [
    { router: { base: { along: 150, acros: 3 } } },
    /router\.base: there is no 'acros' here: did you mean across\?/,
  ],
  [
    { ...BASE, cutters: [{ nominal: 8 }, { nominal: 10, shnk: 8 }] },
    /cutters\[1\]: there is no 'shnk' here: did you mean shank\?/,
  ],
  [{}, /router is missing/],
  [null, /router is missing/],
  [{ router: { plungeTravel: 60 } }, /router\.base is missing/],
  [
    { router: { base: { shape: 'round' } } },
    /router\.base\.along is missing; it is needed: Size of the base/,
  ],
  [{ ...BASE, cutters: [{ shank: 8 }] }, /cutters\[0\]\.nominal is missing/],
  [{ ...BASE, cutters: [{ nominal: 800 }] }, /cutters\[0\]\.nominal is 800 mm; it must be 2 mm to 30 mm/],
  [
    { ...BASE, cutters: [{ nominal: 'eight' }] },
    /cutters\[0\]\.nominal cannot be read: 'eight' is not a length/,
  ],
  [{ ...BASE, cutters: { nominal: 8 } }, /cutters holds a group; it must be a list/],
  [{ ...BASE, cutters: [8] }, /cutters\[0\] holds '8'; it must be a group/],
  [{ ...BASE, paper: 'A3' }, /paper is 'A3'; it must be A4 or Letter/],
  [{ ...BASE, glue: { openMinutes: 10 } }, /glue\.clamp-minutes is missing/],
  [{ ...BASE, jig: [] }, /jig holds a list; it must be a group/],
  [{ router: { base: { along: 150 }, turretSteps: [0, 12, 6] } }, /router\.turret-steps are 0, 12, 6/],
  [{ router: { base: { along: 150 }, turretSteps: [6, 12] } }, /router\.turret-steps are 6, 12/],
  [{ router: { base: { along: 160, across: 150 } } }, /router\.base\.across differs from along/],
  [
    { router: { base: { shape: 'round with flats', along: 160 } } },
    /router\.base\.flats are missing: give near, far or sides/,
  ],
  [
    { router: { base: { shape: 'round with flats', along: 160, flats: { far: 80 } } } },
    /router\.base\.flats\.far is no nearer to the cutter than the round edge/,
  ],
  [
    { router: { base: { along: 160, flats: { near: 70 } } } },
    /router\.base\.flats do not suit shape round: choose round with flats/,
  ],
  [{ ...BASE, sawKerf: 3, 'saw-kerf': 3 }, /saw-kerf is given twice/],
])('%j is refused with its place in the file', (raw, message) => {
  expect(refusal(raw)).toMatch(message);
});

test('all problems of a file are told at once, a line each', () => {
  const lines = refusal({ ...BASE, cuters: [], paper: 'A3', cutters: [{}] }).split('\n');
  expect(lines).toHaveLength(3);
  for (const line of lines) expect(line).toMatch(/^shop\.yaml: /);
});

test('each problem has its path in the file beside its words', () => {
  const raw = {
    router: { base: { along: 150, flats: { near: 70 } }, turretSteps: [0, 'high'] },
    cutters: [{ nominal: 8, shanc: 8 }, 'none'],
    sawKerf: 40,
  };
  const placesOf = (): readonly Misplaced[] => {
    try {
      readShop(raw, 'shop.yaml', 'mm');
    } catch (error) {
      if (error instanceof InputError) return error.places(speaker('mm'));
      throw error;
    }
    return [];
  };
  expect(placesOf().map(({ of, name, text }) => [of, name, text.split(' ').slice(0, 3).join(' ')])).toEqual([
    ['shop', 'router.turret-steps[1]', 'router.turret-steps[1] cannot be'],
    ['shop', 'cutters[0]', 'cutters[0]: there is'],
    ['shop', 'cutters[1]', "cutters[1] holds 'none';"],
    ['shop', 'saw-kerf', 'saw-kerf is 40'],
    ['shop', 'router.base.flats', 'router.base.flats do not'],
  ]);
});

test('papers name a shop file without its folders, and an error names it with them', () => {
  const given = '/home/somebody/private/bench.yaml';
  expect(readShop(BASE, given, 'mm').name).toBe('bench.yaml');
  expect(readShop(BASE, 'C:\\Users\\somebody\\bench.yaml', 'mm').name).toBe('bench.yaml');
  expect(() => readShop({ ...BASE, nosuch: 1 }, given, 'mm')).toThrow(given);
});

test('the air of a place gives the moisture of its wood; a climate by name does so too', () => {
  const own = read({
    place: { 'dry-celsius': 20, 'dry-humidity': 30, 'damp-celsius': 20, 'damp-humidity': 60 },
    wood: { sawn: 'quarter', 'glued-at': 8 },
  });
  const season = seasonOf(own);
  // 20 °C, 30 and 60 %: Wood Handbook (2010), eq. 4–5
  expect(season.climate.dryPercent).toBeCloseTo(6.188, 3);
  expect(season.climate.dampPercent).toBeCloseTo(11, 2);
  expect([rising(season), falling(season)]).toEqual([expect.closeTo(3, 2), expect.closeTo(1.812, 3)]);
  expect(season.cut).toBe('quarter');
  expect(seasonOf(read({ place: { climate: 'damp-coast' } })).climate.dampPercent).toBe(13);
  expect(seasonOf(read({}))).toEqual(USUAL_SEASON);
});

test.each([
  [
    { 'dry-celsius': 20, 'dry-humidity': 30 },
    /place gives 2 of the four figures of the air; give dry-celsius/,
  ],
  [
    { 'dry-celsius': 20, 'dry-humidity': 60, 'damp-celsius': 20, 'damp-humidity': 30 },
    /dries wood to 11\.0 % and damps it to 6\.2 %; damp air must leave more/,
  ],
  [
    { climate: 'inland', 'dry-celsius': 20, 'dry-humidity': 30, 'damp-celsius': 20, 'damp-humidity': 60 },
    /names a climate and gives the air as well: leave one of them out/,
  ],
  [{ climate: 'inlan' }, /inland/],
])('a place that cannot be is refused: %o', (place, words) => {
  expect(refusal({ ...BASE, place })).toMatch(words);
});

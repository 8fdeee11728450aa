import { expect, test } from 'vitest';
import jigModel from '../../models/jig.js';
import stool from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { quickVerdict } from '../../src/checks/index.js';
import { moved } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import { readParameters } from '../../src/model/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { many, SEED } from '../properties/seed.js';
import { spoiltDesigns } from '../properties/spoilt-designs.js';
import { codes, findings, measured, sample, withMortises, withPlace, withTenons } from './sample-design.js';

/** Random designs judged twice; 5,000 are judged by hand with tests/speed/quick-verdicts.mjs. */
const DESIGNS = many(16, 300);

const quick = (design: Design) => quickVerdict(design, speaker('mm'));

test(`for all designs, most of them with a fault, none is called sound at once that has an error on the solids (seed ${SEED})`, async () => {
  const tally = { calledSound: 0, faulty: 0, sound: 0 };
  for (const { name, design } of spoiltDesigns(DESIGNS, SEED)) {
    if (!design) continue;
    const errors = await findings(design).then(
      (found) => found.filter(({ level }) => level === 'error').map(({ message }) => message),
      (refused: Error) => [refused.message],
    );
    const { sound } = quick(design);
    if (sound) expect(errors, name).toEqual([]);
    tally.calledSound += Number(sound);
    tally[errors.length > 0 ? 'faulty' : 'sound'] += 1;
  }
  expect(tally.faulty).toBeGreaterThan(0);
  // it is of use: half of the sound ones are known at once
  expect(tally.calledSound).toBeGreaterThanOrEqual(tally.sound / 3);
});

const deeper = (by: number) => withMortises(sample(), 'shelf', (m) => ({ ...m, depth: m.depth + by }));

test.each<[what: string, design: Design, code: string]>([
  [
    'a tenon too long',
    withTenons(sample(), (t) => ({ ...t, intoB: t.intoB + 3, length: t.length + 3 })),
    'tenon-bottoms-out',
  ],
  [
    'a tenon too thick',
    withTenons(sample(), (t) => ({ ...t, thickness: t.thickness + 0.5 })),
    'tenon-too-tight',
  ],
  [
    'a tenon as wide as its mortise',
    withTenons(sample(), (t) => ({ ...t, width: t.width + 3 })),
    'tenon-edge-gap',
  ],
  [
    'a mortise out of line',
    withMortises(sample(), 'shelf', (m) => ({ ...m, at: moved(m.at, [0, 1, 0]) })),
    'mortises-out-of-line',
  ],
  ['a mortise that breaks through', deeper(40), 'mortise-breaks-through'],
  [
    'a mortise with a wall of 2 mm',
    withMortises(sample(), 'shelf', (m) => ({ ...m, depth: 38 })),
    'wall-thin',
  ],
])('%s is told at once by the code of the full verdict', async (_, design, code) => {
  const told = quick(design);
  expect(told.findings.map((finding) => finding.code)).toContain(code);
  expect(told.sound).toBe(false);
  expect(await codes(design)).toContain(code);
});

test('a board that stands in another is left open, whatever else is right', () => {
  const design = withPlace(sample(), 'upright', (place) => moved(place, [0, 0, -2]));
  const { open, sound } = quick(design);
  expect(open.join()).toContain('overlap of shelf and upright');
  expect(sound).toBe(false);
});

test('what it does not know is left open: a jig with its screws, a board with a groove, a mitred tenon', () => {
  expect(quick(jigModel.build(readParameters(jigModel, {}, 'mm'))).sound).toBe(false);
  const mitred = withTenons(sample(), (tenon) => ({
    ...tenon,
    mitreB: { angleDeg: 45, long: 1 as const, meets: 'another', gap: 1 },
  }));
  expect(quick(mitred).open.length).toBeGreaterThan(0);
  const [shelf, ...others] = sample().boards;
  const grooved = {
    ...sample(),
    boards: [{ ...shelf!, board: { ...shelf!.board, grooves: [{} as never] } }, ...others],
  };
  expect(quick(grooved).open).toContain('grooves of shelf');
});

test('a mortise deeper than the router at hand plunges is left open, so that nothing is called sound that cannot be cut', () => {
  const shop = builtInShop('mm');
  const tools = { shop: { ...shop, router: { ...shop.router, plungeTravel: 20 } }, plate: 12 };
  const told = quickVerdict(sample(), speaker('mm'), tools);
  expect(told.open.filter((one) => one.startsWith('reach into mortise')).length).toBe(2);
  expect(told.sound).toBe(false);
});

test('a mortise that leans from its face is left open with tools at hand: whether an earlier face lets it be cut is not looked at', () => {
  const leaning = stool.build(readParameters(stool, { stretcherAxis: 'along-stretcher' }, 'mm'));
  const { open, sound } = quickVerdict(leaning, speaker('mm'), { shop: builtInShop('mm'), plate: 12 });
  expect(open.some((one) => one.startsWith('reach into mortise'))).toBe(true);
  expect(sound).toBe(false);
});

test('a sound stool is sound at once, and its figures are none better than those on the solids', async () => {
  const design = stool.build(readParameters(stool, {}, 'mm'));
  const { findings: found, open, sound } = quick(design);
  expect(open).toEqual([]);
  expect(sound).toBe(true);
  // a thin wall that is told must be there
  for (const { code, subjects, measured: told } of found.filter((one) => one.code === 'wall-thin')) {
    const solid = (await measured(design)).find(({ tenon }) => tenon.id === subjects[0])!;
    const { wall } = solid.mortises.find(({ board }) => board === subjects[1])!;
    expect(told, code).toBeLessThanOrEqual(wall + 1e-6);
  }
});

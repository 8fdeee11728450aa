import { describe, expect, test } from 'vitest';
import frame from '../../models/frame.js';
import stool from '../../models/stool.js';
import { type Bench, benchInShop, benchOf } from '../../src/checks/index.js';
import { cuttersAtHand } from '../../src/checks/shop/cutters-at-hand.js';
import { INCH, speaker } from '../../src/length/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { builtInShop, type Shop, toolsOf } from '../../src/shop/index.js';
import { solidsOf, startKernel } from '../../src/solid/index.js';
import { aShop } from '../shop/a-shop.js';
import { plainJig } from '../shop/designs.js';

const kernel = await startKernel();

const having = (...diameters: readonly number[]): Shop => ({
  ...aShop,
  cutters: diameters.map((nominal) => ({ nominal })),
});

function cutterOf(model: Model, shop: Shop, raw = {}): number {
  return model.build(readParameters(model, raw, 'mm'), toolsOf(shop)).cutter;
}

function look<T>(shop: Shop, raw: Readonly<Record<string, unknown>>, use: (bench: Bench) => T): T {
  const solids = solidsOf(kernel, frame.build(readParameters(frame, raw, 'mm'), toolsOf(shop)));
  return use(benchInShop(benchOf(solids, speaker('mm')), shop, plainJig()));
}

describe('the cutter', () => {
  test('is the one at hand nearest to a third of the thinnest board, 24 mm', () => {
    expect(cutterOf(stool as Model, having(6, 9.5, 12))).toBe(9.5);
    expect(cutterOf(frame as Model, having(6, 12))).toBe(6);
    expect(cutterOf(stool as Model, having())).toBe(8);
  });

  test('is an inch size in a shop of inches: 5/16 in for boards of 24 mm', () => {
    expect(cutterOf(stool as Model, builtInShop('in'))).toBeCloseTo((5 / 16) * INCH, 9);
  });

  test('that is asked for stays as it is asked', () => {
    expect(cutterOf(stool as Model, having(6), { cutter: '9' })).toBe(9);
  });
});

test('a joint that wants a cutter the shop lacks is told, with the nearest it has, and taking that ends it', () => {
  const shop = having(6, 10);
  const [finding, ...more] = look(shop, { cutter: '8' }, cuttersAtHand);
  expect(more).toEqual([]);
  expect(finding).toMatchObject({ code: 'cutter-not-at-hand', level: 'warning', measured: 8 });
  expect(finding!.subjects).toHaveLength(4);
  expect(look(shop, { cutter: String(finding!.limit) }, cuttersAtHand)).toEqual([]);
  // a shop that names no cutter is not judged
  expect(look(having(), { cutter: '8' }, cuttersAtHand)).toEqual([]);
});

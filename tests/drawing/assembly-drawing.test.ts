import { afterAll, expect, test } from 'vitest';
import stool from '../../models/stool.js';
import { assemblyFigure, type Dimension } from '../../src/drawing/index.js';
import type { Model } from '../../src/model/index.js';
import { startKernel } from '../../src/solid/index.js';
import { OPTIONS, solidsFor } from './drawn-designs.js';

const kernel = await startKernel();
afterAll(() => kernel.dispose());

/** What is dimensioned on the drawing of a stool put together. */
function told(values: Readonly<Record<string, string>>): readonly Dimension[] {
  const solids = solidsFor(kernel, { called: 'stool', model: stool as unknown as Model, values });
  const figure = assemblyFigure(solids, OPTIONS)({ width: 182, height: 250 })!;
  return figure.draw([0, 0]).flatMap((one) => (one.kind === 'dimension' ? [one] : []));
}

const leans = (all: readonly Dimension[]) =>
  all.filter(({ unit }) => unit === 'deg').map(({ value }) => Number(value.toFixed(2)));

const sizes = (all: readonly Dimension[], what: RegExp) =>
  all.filter((one) => what.test(one.what)).map(({ value }) => Number(value.toFixed(1)));

const SIZES = {
  rake: '12.5',
  taper: '4',
  treadLength: '430',
  overhang: '31',
  stretcherHeight: '88',
  stretcherWidth: '64',
};

test('a stool put together is told with its rake, overhang and the height of its stretcher, as they were asked for', () => {
  const all = told(SIZES);
  // a taper of 4° of a board raked by 12.5° leans, seen from the side, by atan(tan 4° / cos 12.5°)
  const seen = (Math.atan(Math.tan((4 * Math.PI) / 180) / Math.cos((12.5 * Math.PI) / 180)) * 180) / Math.PI;
  expect(leans(all)).toEqual([12.5, Number(seen.toFixed(2))]);
  expect(sizes(all, /^end of what lies on top to outside/)[0]).toBe(31);
  expect(sizes(all, /^floor to underside of the stretcher/)).toEqual([88]);
  expect(sizes(all, /^underside of the stretcher to top of the stretcher/)).toEqual([64]);
});

test('an upright stool has no lean to tell, and one raked otherwise another', () => {
  expect(leans(told({ rake: '0', taper: '0' }))).toEqual([]);
  expect(leans(told({ ...SIZES, rake: '9' }))[0]).toBe(9);
  expect(sizes(told({ ...SIZES, overhang: '36' }), /^end of what lies on top to outside/)[0]).toBe(36);
});

test('each size is told once: no dimension of a view repeats another', () => {
  const keys = told(SIZES).map(({ what, value }) => `${what} ${value.toFixed(2)}`);
  const twice = keys.filter((key, i) => keys.indexOf(key) !== i);
  expect(twice).toEqual([]);
});

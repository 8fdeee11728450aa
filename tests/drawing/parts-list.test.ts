import { afterAll, expect, test } from 'vitest';
import jig from '../../models/jig.js';
import { partsList } from '../../src/drawing/figure/index.js';
import type { Model } from '../../src/model/index.js';
import { startKernel } from '../../src/solid/index.js';
import { solidsFor } from './drawn-designs.js';

const kernel = await startKernel();
afterAll(() => kernel.dispose());

test('four bolts alike are one row, named once, and every body stands in one row', () => {
  const solids = solidsFor(kernel, { called: 'jig', model: jig as unknown as Model, values: {} });
  const parts = partsList(solids, 'in');
  const bolts = parts.filter(({ name }) => name.startsWith('hex bolt'));
  expect(bolts.map(({ ids }) => ids.length)).toEqual([4]);
  for (const { name } of parts) {
    const words = name.split(', ');
    expect(new Set(words).size, name).toBe(words.length);
  }
  const bodies = [...solids.boards.keys(), ...solids.tenons.keys(), ...solids.hardware.keys()];
  expect(parts.flatMap(({ ids }) => ids).toSorted()).toEqual(bodies.toSorted());
});

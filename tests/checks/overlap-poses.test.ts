import { expect, test } from 'vitest';
import jig from '../../models/jig.js';
import { readParameters } from '../../src/model/index.js';
import { findings } from './sample-design.js';

test('two pieces that meet in several positions of the jig are told of once, where they meet most', async () => {
  const tight = jig.build(readParameters(jig, { knobDiameter: '80', slotPosition: '90' }, 'mm'));
  const pairs = (await findings(tight))
    .filter(({ code }) => code === 'pieces-overlap')
    .map(({ subjects }) => subjects.join('/'));
  expect(pairs.length).toBeGreaterThan(0);
  expect(new Set(pairs).size).toBe(pairs.length);
});

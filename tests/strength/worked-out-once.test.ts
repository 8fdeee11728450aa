import { expect, test } from 'vitest';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import { startDesign } from '../../src/files/index.js';
import { readParameters } from '../../src/model/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { strengthOn } from '../../src/strength/index.js';

test('what a piece bears is worked out once, for the checks and for the papers', async () => {
  const made = await startDesign({
    model: stool,
    values: readParameters(stool, {}, 'mm'),
    shop: builtInShop('mm'),
    jig: jig.build(readParameters(jig, {}, 'mm')),
    units: 'mm',
    format: 'binary',
    curves: 'arcs',
    force: false,
    version: '0',
    progress: () => {},
  });
  try {
    expect(made.findings.filter(({ level }) => level === 'error')).toEqual([]);
    const { strength } = made.papers;
    expect(strength).toBeDefined();
    expect(strengthOn(made.solids, made.bench.told)).toBe(strength);
  } finally {
    made.dispose();
  }
});

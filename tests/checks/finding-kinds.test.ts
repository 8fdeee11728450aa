import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import stool from '../../models/stool.js';
import { MEASURED } from '../../src/checks/finding/basis.js';
import { benchOf, FINDING_KINDS, findingsMd, runChecks } from '../../src/checks/index.js';
import { speaker } from '../../src/length/index.js';
import { readParameters } from '../../src/model/index.js';
import { solidsOf, startKernel } from '../../src/solid/index.js';

const root = path.resolve(import.meta.dirname, '../..');

test('the catalogue in docs is fresh: node scripts/findings.mjs writes it', () => {
  expect(readFileSync(path.join(root, 'docs/findings.md'), 'utf8')).toBe(findingsMd());
});

test('nothing stands in the catalogue that no check, limit or model can find', () => {
  const sources = ['src/checks', 'src/strength', 'src/shop/holding', 'models/jig']
    .flatMap((folder) =>
      readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.ts') && !/(-kinds|codes)\.ts$/.test(name))
        .map((name) => readFileSync(path.join(root, folder, name), 'utf8'))
        // a name in a type finds nothing
        .map((text) => text.replace(/^ *\| '.*$/gm, '')),
    )
    .join('\n');
  const dead = Object.keys(FINDING_KINDS).filter(
    (code) => !sources.includes(`'${code.replace(/^(cannot-be-cut|held-another-way)-/, '')}'`),
  );
  expect(dead).toEqual([]);
});

test('each kind is told in whole sentences, with what its limit rests on', () => {
  for (const [code, { meaning, limit, basis, cure }] of Object.entries(FINDING_KINDS)) {
    expect(meaning, code).toMatch(/^[A-Z].*[.)]$/);
    expect(cure, code).toMatch(/^[A-Z].*\.$/);
    expect(limit, code).toMatch(/[a-z°³0-9)]$/);
    expect(basis, code).not.toBe('');
  }
});

test('what the checks find is never worse than the catalogue says, and rests on what it says', async () => {
  const kernel = await startKernel();
  const order = ['note', 'warning', 'error'];
  const seen = new Set<string>();
  try {
    for (const values of [
      { stretcherThickness: 15, cutter: 14 },
      { cheekClearance: '0.5 mm' },
      { cutter: '6', height: '600 mm' },
    ]) {
      const design = stool.build(readParameters(stool, values, 'mm'));
      for (const { code, level, basis } of runChecks(benchOf(solidsOf(kernel, design), speaker('mm')))) {
        seen.add(code);
        const kind = FINDING_KINDS[code];
        expect(order.indexOf(level), code).toBeLessThanOrEqual(order.indexOf(kind.level));
        // a figure the person asked for is a fact, whatever is usual
        expect([kind.basis, MEASURED], code).toContain(basis);
      }
    }
  } finally {
    kernel.dispose();
  }
  expect(seen.size).toBeGreaterThan(2);
});

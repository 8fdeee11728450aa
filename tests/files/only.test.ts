import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import type { DesignResult } from '../../src/files/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { makeDesign } from '../../src/node/index.js';
import { builtInShop } from '../../src/shop/index.js';

const out = mkdtempSync(path.join(tmpdir(), 'tenonwright-only-'));
afterAll(() => rmSync(out, { recursive: true, force: true }));

const makeOnly = (...only: readonly string[]): Promise<DesignResult> =>
  makeDesign({
    model: stool as unknown as Model,
    values: readParameters(stool, { cutter: '7' }, 'mm'),
    shop: builtInShop('mm'),
    jig: jig.build(readParameters(jig, {}, 'mm')),
    units: 'mm',
    out,
    only,
    format: 'binary',
    curves: 'arcs',
    force: false,
    version: '0.0.0',
    progress: () => {},
  });

/** A run without papers, and then one with them over it. */
let bare: DesignResult;
let whole: DesignResult;
beforeAll(async () => {
  bare = await makeOnly('stl');
  whole = await makeOnly('stl', 'shop');
});

test('papers of the bench that are not asked for are not in the summary, and the findings stay the same', () => {
  expect(bare.summary.shop).toBeNull();
  expect(bare.findings).toEqual(whole.findings);
  expect(bare.findings.map(({ code }) => code)).toContain('cutter-not-at-hand');
  const mortises = whole.summary.joints.length * 2;
  expect(whole.summary.shop!.cards.flatMap(({ cuts }) => cuts)).toHaveLength(mortises);
});

test('the pieces that hold and clamp the work are written with or without the papers', () => {
  const solids = ({ files }: DesignResult) =>
    files.map((file) => path.relative(out, file.path)).filter((name) => name.endsWith('.stl'));
  expect(solids(bare)).toEqual(solids(whole));
  const aids = whole.summary.shop!.aids.map(({ solid }) => path.join('stool', solid!));
  expect(aids.length).toBeGreaterThan(0);
  expect(solids(bare)).toEqual(expect.arrayContaining(aids));
});

test('a run with papers after one without tells of no change', () => {
  expect(whole.changes).toEqual([]);
});

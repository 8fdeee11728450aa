import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import jig from '../../models/jig.js';
import type { Design } from '../../src/assembly/index.js';
import { defineModel, readParameters } from '../../src/model/index.js';
import { makeDesign } from '../../src/node/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { panelledDoor } from './panelled-door.js';
import { smallTable } from './small-table.js';

/** Everything written of a design, its texts by their paths. */
async function made(design: Design) {
  const out = process.env.TENONWRIGHT_KEEP ?? mkdtempSync(path.join(tmpdir(), 'made-'));
  const model = defineModel({
    name: design.name,
    title: design.title,
    summary: design.title,
    parameters: {},
    build: () => design,
  });
  const result = await makeDesign({
    model,
    values: {},
    shop: builtInShop('mm'),
    jig: jig.build(readParameters(jig, {}, 'mm')),
    units: 'mm',
    format: 'binary',
    curves: 'arcs',
    force: false,
    version: '0.0.0',
    progress: () => undefined,
    out,
  });
  const text = (end: string) =>
    readFileSync(result.files.find(({ path: at }) => at.endsWith(end))!.path, 'utf8');
  const texts = {
    setup: text('setup.md'),
    glueUp: text('glue-up.md'),
    hardware: text('hardware.csv'),
  };
  if (!process.env.TENONWRIGHT_KEEP) rmSync(out, { recursive: true });
  return { result, texts };
}

test('a panelled door is made whole: cards for its grooves, its panel put in dry before it is shut in', async () => {
  const { result, texts } = await made(panelledDoor());
  expect(result.findings).toEqual([]);
  expect(result.heldBack).toEqual([]);
  // mortises first, along whole edges; then the grooves
  expect(result.summary.captives!.map(({ panel }) => panel)).toEqual(['panel']);
  expect(result.summary.boards[0]!.grooves).toEqual([
    {
      id: 'groove',
      face: 'opposite-edge',
      from: 'reference-face',
      distance: 8,
      width: 6,
      depth: 10,
      length: 566,
      stopped: ['start', 'end'],
    },
  ]);
  const kinds = result.summary
    .shop!.steps.filter(({ board }) => board === 'left-stile')
    .map(({ kind }) => kind);
  expect(kinds).toEqual(['mill', 'mortise', 'mortise', 'trim horn', 'groove', 'ease']);
  expect(texts.setup).toMatch(/K1: groove along a fence/);
  expect(texts.setup).toMatch(
    /left stile \| opposite edge \| reference face \| from the opposite end to the reference end/,
  );
  const order = texts.glueUp.indexOf('| G2 | panel |');
  expect(order).toBeGreaterThan(0);
  expect(texts.glueUp).toContain('G2: the panel goes into its grooves dry: no glue in a groove');
  expect(texts.glueUp).toContain('G4: the frame closes on the panel, which stays dry');
}, 300_000);

test('a table is made whole: its top is put on last, held by buttons', async () => {
  const { result, texts } = await made(smallTable());
  expect(result.findings.filter(({ level }) => level === 'error')).toEqual([]);
  expect(result.heldBack).toEqual([]);
  expect(result.summary.fastenings).toHaveLength(10);
  expect(result.summary.shop!.glueUp.loose).toEqual([]);
  // the very last thing done
  expect(result.summary.shop!.steps.at(-1)!.what).toMatch(/^fix the top last, not glued, to the front apron/);
  expect(texts.hardware).toMatch(/,10,"wooden button 42 × 25 × 16.5 mm, tongue 12 × 7 mm",button,/);
  expect(texts.hardware).toMatch(/,10,"wood screw 4 × 35 mm, pan head",screw,/);
  expect(texts.glueUp.indexOf('Last: held without glue')).toBeGreaterThan(texts.glueUp.indexOf('| G7 |'));
  // half of the top's 450 less the apron's place, white ash, 0.00274 a point (Wood Handbook, table 13-5), six points
  expect(texts.glueUp).toMatch(/\| top \| front apron \| straight down \| 3 buttons \| 2\.7 mm/);
  expect(0.00274 * 6 * (225 - 40 - 22.5)).toBeCloseTo(2.67, 2);
}, 300_000);

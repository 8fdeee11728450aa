import { expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { json } from '../../src/files/summary/json.js';
import { summaryOf } from '../../src/files/summary/summary.js';
import { WORLD } from '../../src/frame/index.js';
import type { TenonMeasure } from '../../src/solid/index.js';
import { emptyPapers } from './empty-papers.js';

const rail = makeBoard({
  id: 'rail',
  material: 'white oak',
  blank: { length: 1000, width: 100, thickness: 20 },
});

const design: Design = {
  name: 'frame',
  title: 'A frame',
  cutter: 8,
  boards: [{ board: rail, place: WORLD }],
  joints: [],
  hardware: [
    { id: 'bolt-1', kind: 'bolt', name: 'hex bolt M8 x 60', stages: [], place: WORLD, bought: true },
  ],
  derived: [{ name: 'rake', value: 7.5, unit: 'deg', help: 'lean of the legs' }],
  notes: [],
};

const mortise = (board: string, depth: number) => ({
  board,
  width: 8,
  length: 40,
  depth,
  bottomClearance: 1,
  cheekClearance: 0.05,
});

const measured = {
  joint: { id: 'rail/leg', a: 'rail', b: 'leg' },
  tenon: { id: 'rail/leg/1' },
  thickness: 7.9,
  width: 39,
  length: 53,
  mortises: [mortise('rail', 30), mortise('leg', 25)],
} as unknown as TenonMeasure;

const summary = summaryOf({
  design,
  version: '0.1.0',
  parameters: { height: { value: 230, unit: 'mm' } },
  volumes: new Map([['rail', 2_000_000]]),
  tenons: [measured],
  findings: [],
  files: [{ path: 'parts/rail.stl', bytes: 684, sha256: 'ab'.repeat(32) }],
  boardFiles: new Map([['rail', { solid: 'parts/rail.stl' }]]),
  papers: emptyPapers(design),
  revision: 'r1',
  aidFiles: new Map(),
});

test('two litres of white oak weigh two thousandths of what a cubic metre does', () => {
  // Wood Handbook FPL-GTR-282, Table 5-3: specific gravity of white oak 0.68 at 12 % moisture content, mass 12 % above it
  expect(summary.boards[0]!.massKg).toBeCloseTo(0.002 * 0.68 * 1.12 * 1000, 2);
});

test('a template that was held back is null and the solid names its file', () => {
  expect(summary.boards[0]).toMatchObject({ solid: 'parts/rail.stl', template: null });
});

test('the joint lists its tenon and both mortises with the clearances measured', () => {
  const [joint] = summary.joints;
  expect(joint).toMatchObject({ id: 'rail/leg', a: 'rail', b: 'leg', tenon: { length: 53 } });
  expect(joint!.mortises.map(({ board, depth }) => [board, depth])).toEqual([
    ['rail', 30],
    ['leg', 25],
  ]);
  expect(joint!.mortises[0].cheekClearanceMm).toBe(0.05);
});

test('the report is one JSON text that reads back whole', () => {
  expect(JSON.parse(json(summary))).toEqual(JSON.parse(JSON.stringify(summary)));
});

test('a board whose volume was not measured is a fault', () => {
  const rest = { papers: undefined, revision: 'r1', aidFiles: new Map() };
  const parts = { design, version: '0', parameters: {}, tenons: [], findings: [], files: [], ...rest };
  expect(() => summaryOf({ ...parts, volumes: new Map(), boardFiles: new Map() })).toThrow(/rail/);
});

import { describe, expect, test } from 'vitest';
import stool from '../../models/stool.js';
import { changeLines, changesSince, json, type Summary, summaryOf } from '../../src/files/index.js';
import { speaker } from '../../src/length/index.js';
import { parameterValues, readParameters } from '../../src/model/index.js';
import type { Shop, ShopPapers } from '../../src/shop/index.js';
import { gate, measureJoints, solidsOf, startKernel, volume } from '../../src/solid/index.js';
import { emptyPapers } from './empty-papers.js';

const papersIn = (papers: ShopPapers, shop: Partial<Shop> = {}): ShopPapers => ({
  ...papers,
  shop: { ...papers.shop, ...shop },
});

const known = new Map<string, Promise<Summary>>();

/** The summary of a stool, as a run writes it; each made once. */
function summary(...of: Parameters<typeof summaryAnew>): Promise<Summary> {
  const key = JSON.stringify(of);
  const made = known.get(key) ?? summaryAnew(...of);
  known.set(key, made);
  return made;
}

async function summaryAnew(
  given: Readonly<Record<string, unknown>>,
  version = '1.0.0',
  shop?: Partial<Shop>,
): Promise<Summary> {
  const values = readParameters(stool, given, 'mm');
  const design = stool.build(values);
  const kernel = await startKernel();
  try {
    const solids = solidsOf(kernel, design);
    gate(solids);
    return summaryOf({
      design,
      version,
      parameters: parameterValues(stool, stool.complete(values)),
      volumes: new Map([...solids.boards.values()].map(({ id, own }) => [id, volume(own)])),
      tenons: measureJoints(solids),
      findings: [],
      files: [],
      boardFiles: new Map(),
      papers: papersIn(emptyPapers(design), shop),
      revision: '0',
      aidFiles: new Map(),
    });
  } finally {
    kernel.dispose();
  }
}

const written = (one: Summary): unknown => JSON.parse(json(one));

test('a rerun of the same design changes nothing', async () => {
  expect(changesSince(written(await summary({})), await summaryAnew({}))).toEqual([]);
});

test('a wider stretcher changes its parameter, its board and its own joints, and no other board', async () => {
  const changes = changesSince(
    written(await summary({ stretcherWidth: 70, height: 230 })),
    await summary({ stretcherWidth: 80, height: 230 }),
  );
  expect(changes).toContainEqual({
    of: 'parameter',
    subject: 'stretcher-width',
    what: '',
    was: 70,
    is: 80,
    unit: 'mm',
  });
  const subjects = (of: string) => [
    ...new Set(changes.filter((change) => change.of === of).map(({ subject }) => subject)),
  ];
  expect(subjects('parameter')).toEqual(['stretcher-width']);
  // the sides take a longer mortise; the tread knows nothing of the stretcher
  expect(subjects('board').toSorted()).toEqual(['left-side', 'right-side', 'stretcher']);
  expect(subjects('joint').every((subject) => subject.startsWith('stretcher/'))).toBe(true);
  expect(subjects('joint')).toHaveLength(2);
  expect(subjects('derived')).toEqual([]);
});

test('a second tread is new, and so are its joints', async () => {
  const lines = changeLines(
    changesSince(written(await summary({})), await summary({ treads: 2 })),
    speaker('mm'),
  );
  expect(lines).toContain('board lower-tread is new');
  expect(lines).toContain('board tread is gone');
  expect(lines).toContain('parameter treads: 1 -> 2');
});

test('lengths and angles are told in the units of the run', async () => {
  const changes = changesSince(
    written(await summary({ stretcherWidth: 70 })),
    await summary({ rake: 12, stretcherWidth: 76.2 }),
  );
  expect(changeLines(changes, speaker('in'))).toContain('parameter stretcher-width: 2.7559" -> 3"');
  expect(changeLines(changes, speaker('in'))).toContain('parameter rake: 10° -> 12°');
});

test('a new version of the program is a change', async () => {
  expect(
    changeLines(changesSince(written(await summary({})), await summary({}, '1.1.0')), speaker('mm')),
  ).toEqual(['program version: 1.0.0 -> 1.1.0']);
});

test('what changed in the shop is told, and nothing of it where a run made no papers', async () => {
  const before = await summary({});
  const now = await summary({}, '1.0.0', {
    sawKerf: 2.4,
    glue: { openMinutes: 5, clampMinutes: 45, leastCelsius: 10 },
  });
  expect(changeLines(changesSince(written(before), now), speaker('mm'))).toEqual([
    'shop saw-kerf: 3 mm -> 2.4 mm',
    'shop glue open-minutes: 10 -> 5',
  ]);
  expect(changesSince(written({ ...before, shop: null }), now)).toEqual([]);
  expect(changesSince(written(before), { ...now, shop: null })).toEqual([]);
});

describe('what is no summary is no last run', () => {
  test.each([[undefined], [null], [{}], ['summary'], [[]], [{ parameters: {}, boards: 3 }]])(
    '%j',
    async (before) => {
      expect(changesSince(before, await summary({}))).toEqual([]);
    },
  );
});

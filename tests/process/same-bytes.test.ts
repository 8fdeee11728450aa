// Two processes, one result: no clock, no chance and no address of memory is in any file.

import path from 'node:path';
import { expect, test } from 'vitest';
import { many } from '../properties/seed.js';
import { madeByProgram } from './made-by-program.js';
import { pairIn } from './pair.js';
import { hashes, listed, ownFolder, run } from './program.js';

const out = ownFolder();

/** What takes long is left out for somebody who has just cloned. */
const QUICK = ['--only', 'stl,dxf,shop,faces,3mf,glb,page'].slice(0, many(2, 0));

/** The jig for CI alone: it is one more model written in code. */
const MODELS = (['frame', 'stool', 'jig'] as const).slice(0, many(2, 3));

// the stool's files are held to those of a nudged engine as well: tests/files/nudged-arithmetic.test.ts
for (const model of MODELS.filter((one) => one !== 'stool' || many(0, 1)))
  test(`two runs write the same bytes for the ${model}, in whatever folder and with arguments in any order`, async () => {
    const two = path.join(out, model, 'deep', 'two');
    const { ended, folder } = await madeByProgram(model);
    const second = await run('make', '--out', two, model);
    expect(second.status).toBe(ended.status);
    const files = hashes(folder);
    expect(Object.keys(files).length).toBeGreaterThan(8);
    expect(hashes(path.join(two, model))).toEqual(files);
  });

test.each(MODELS)("the list of the %s's files holds the hash of every one", async (model) => {
  const { folder } = await madeByProgram(model);
  const { 'files.sha256': list, ...others } = hashes(folder);
  expect(list).toMatch(/^[0-9a-f]{64}$/);
  expect(listed(folder)).toEqual(others);
});

test('a run over an older set of another size leaves what a fresh run writes', async () => {
  const [over, fresh] = [path.join(out, 'over'), path.join(out, 'fresh')];
  const pair = pairIn(out);
  const quiet = ['--quiet', ...QUICK];
  expect((await run('make', pair, '--thick', '36', '--cutter', '14', '--out', over, ...quiet)).status).toBe(
    0,
  );
  const older = hashes(over);
  expect((await run('make', pair, '--out', over, ...quiet)).status).toBe(0);
  expect((await run('make', pair, '--out', fresh, ...quiet)).status).toBe(0);
  const left = hashes(over);
  expect(left).toEqual(hashes(fresh));
  // tenons and depth blocks of other sizes, each in a file of its own name
  expect(Object.keys(older).filter((file) => !(file in left)).length).toBeGreaterThan(2);
});

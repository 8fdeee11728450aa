// Two processes, one result: no clock, no chance and no address of memory is in any file.

import path from 'node:path';
import { expect, test } from 'vitest';
import { many } from '../properties/seed.js';
import { pairIn } from './pair.js';
import { hashes, listed, ownFolder, run } from './program.js';

const out = ownFolder();

/** What takes long is left out of the larger designs for somebody who has just cloned. */
const QUICK = ['--only', 'stl,dxf,shop,faces,3mf,glb,page'].slice(0, many(2, 0));

for (const model of ['jig', 'frame', 'stool']) {
  const kinds = model === 'frame' ? [] : QUICK;
  test(`two runs write the same bytes for the ${model}, in whatever folder and with arguments in any order`, async () => {
    const [one, two] = [path.join(out, `${model}-one`), path.join(out, model, 'deep', 'two')];
    const first = await run('make', model, '--force', ...kinds, '--out', one);
    const second = await run('make', '--out', two, '--quiet', ...kinds, '--force', model);
    expect(second.status).toBe(first.status);
    const made = hashes(path.join(one, model));
    expect(Object.keys(made).length).toBeGreaterThan(8);
    expect(hashes(path.join(two, model))).toEqual(made);
  });

  test(`the list of the ${model}'s files holds the hash of every one`, async () => {
    const folder = path.join(out, `${model}-one`, model);
    const { 'files.sha256': list, ...others } = hashes(folder);
    expect(list).toMatch(/^[0-9a-f]{64}$/);
    expect(listed(folder)).toEqual(others);
  });
}

test('a run over an older set of another size leaves what a fresh run writes', async () => {
  const [over, fresh] = [path.join(out, 'over'), path.join(out, 'fresh')];
  const pair = pairIn(out);
  expect((await run('make', pair, '--thick', '36', '--cutter', '14', '--out', over, '--quiet')).status).toBe(
    0,
  );
  const older = hashes(over);
  expect((await run('make', pair, '--out', over, '--quiet')).status).toBe(0);
  expect((await run('make', pair, '--out', fresh, '--quiet')).status).toBe(0);
  const left = hashes(over);
  expect(left).toEqual(hashes(fresh));
  // tenons and depth blocks of other sizes, each in a file of its own name
  expect(Object.keys(older).filter((file) => !(file in left)).length).toBeGreaterThan(2);
});

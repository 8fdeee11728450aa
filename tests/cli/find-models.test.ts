import { readdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { atDesk } from './desk.js';

const modelsFolder = fileURLToPath(new URL('./faulty-models', import.meta.url));

test('only the chosen model is loaded: a broken one beside it does no harm', async () => {
  expect((await atDesk(['check', 'small'], { modelsFolder })).status).toBe(0);
  expect((await atDesk(['list'], { modelsFolder })).status).toBe(1);
});

test.each([
  ['broken', /this file cannot be loaded/],
  ['clash', /clash has a parameter named like the option --out/],
  ['misnamed', /misnamed\.ts defines the model 'small'/],
  ['nothing', /nothing\.ts has no model as its default export/],
])('the faulty model %s is a fault of the program, named', async (name, message) => {
  const ran = await atDesk(['make', name], { modelsFolder });
  expect(ran.status).toBe(1);
  expect(ran.err).toMatch(message);
});

test('every file of the models folder beside the program is a model that is listed, described and built', async () => {
  const folder = fileURLToPath(new URL('../../models', import.meta.url));
  const names = (await readdir(folder)).flatMap((file) => (file.endsWith('.ts') ? [file.slice(0, -3)] : []));
  expect(names.length).toBeGreaterThan(0);
  const { out, status } = await atDesk(['list'], { modelsFolder: folder });
  expect(status).toBe(0);
  for (const name of names) {
    expect(out).toMatch(new RegExp(`^${name} `, 'm'));
    expect((await atDesk(['describe', name], { modelsFolder: folder })).status).toBe(0);
    const ran = await atDesk(['check', name], { modelsFolder: folder });
    expect(ran.err).not.toMatch(/tenonwright:/);
  }
});

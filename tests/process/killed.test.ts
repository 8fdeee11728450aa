// The built program, killed while it makes a design over an older set.

import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { performance } from 'node:perf_hooks';
import { setTimeout } from 'node:timers/promises';
import { beforeAll, expect, test } from 'vitest';
import { hashes, listed, ownFolder, run, start } from './program.js';

const KILLS = 12;

const out = ownFolder();
const set = path.join(out, 'frame');

/** Two sets to tell apart, and how long one takes. */
const OLD = ['make', 'frame', '--length', '500', '--out', out, '--quiet'] as const;
const NEW = ['make', 'frame', '--length', '700', '--out', out, '--quiet'] as const;

let [oldSet, newSet]: Readonly<Record<string, string>>[] = [];
let wholeRun = 0;

beforeAll(async () => {
  expect((await run(...NEW)).status).toBe(0);
  newSet = hashes(set);
  const began = performance.now();
  expect((await run(...OLD)).status).toBe(0);
  wholeRun = performance.now() - began;
  oldSet = hashes(set);
  expect(oldSet).not.toEqual(newSet);
});

/** The set that stands, or that a killed run had moved aside. */
function standing(): string {
  if (existsSync(set)) return set;
  const aside = readdirSync(out).find((entry) => entry.includes('-old-'));
  if (aside === undefined) throw new Error(`no set is left in ${readdirSync(out).join(', ')}`);
  return path.join(out, aside);
}

test(`a make killed at any moment leaves a whole set, old or new, and the next run succeeds (${KILLS} kills)`, async () => {
  let killed = 0;
  for (let kill = 0; kill < KILLS; kill++) {
    const { child, ended } = start(...NEW);
    // spread over the run, half of the kills over its last third, where files are written
    const share = kill % 2 === 0 ? kill / KILLS : 0.66 + (kill / KILLS) * 0.36;
    await setTimeout(wholeRun * share);
    child.kill('SIGKILL');
    if ((await ended).signal === 'SIGKILL') killed++;
    const left = standing();
    const found = hashes(left);
    const { 'files.sha256': list, ...others } = found;
    expect(list, `kill ${kill}`).toBeDefined();
    expect(listed(left), `kill ${kill}`).toEqual(others);
    expect([oldSet, newSet], `kill ${kill}`).toContainEqual(found);
    expect((await run(...OLD)).status, `kill ${kill}`).toBe(0);
    expect(hashes(set), `kill ${kill}`).toEqual(oldSet);
    expect(readdirSync(out), `kill ${kill}`).toEqual(['frame']);
  }
  expect(killed).toBeGreaterThan(KILLS / 2);
});

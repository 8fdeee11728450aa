// The built program, killed while it makes a design over an older set.

import type { ChildProcess } from 'node:child_process';
import { readdirSync, watch } from 'node:fs';
import path from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { beforeAll, expect, test, vi } from 'vitest';
import { many } from '../properties/seed.js';
import { pairIn } from './pair.js';
import { hashes, listed, ownFolder, run, start } from './program.js';

/** Kills when a row of progress is printed: before, while and after the design is checked. */
const AT_ROWS = [1, 2, 5, 9, 14, 17].slice(0, many(3, 6));

/** Kills this long after the hidden folder of a new set is there: while it is written and put in place, ms. */
const AFTER_FOLDER = [0, 4, 16, 1, 2, 8].slice(0, many(2, 6));

const out = ownFolder();
const set = path.join(out, 'pair');
const pair = pairIn(ownFolder());

/** Two sets to tell apart. */
const OLD = ['make', pair, '--width', '250', '--only', 'stl,dxf', '--out', out, '--quiet'] as const;
const NEW = ['make', pair, '--width', '350', '--only', 'stl,dxf', '--out', out] as const;

let [oldSet, newSet]: Readonly<Record<string, string>>[] = [];

beforeAll(async () => {
  expect((await run(...NEW)).status).toBe(0);
  newSet = hashes(set);
  expect((await run(...OLD)).status).toBe(0);
  oldSet = hashes(set);
  expect(oldSet).not.toEqual(newSet);
});

/** Settles when the run has printed so many rows of progress, or has ended. */
const rowsPrinted = (child: ChildProcess, rows: number): Promise<void> =>
  new Promise((resolve) => {
    let text = '';
    child.stderr!.on('data', (piece: string) => {
      text += piece;
      if (text.split('\n').length > rows) resolve();
    });
    child.once('close', () => resolve());
  });

/** Settles when the hidden folder of a new set is there, or the run has ended. */
const folderMade = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    const watching = watch(out, (_, name) => {
      if (name?.includes('-new-')) done();
    });
    const done = () => {
      watching.close();
      resolve();
    };
    child.once('close', done);
  });

const MOMENTS: readonly { readonly when: string; readonly come: (child: ChildProcess) => Promise<void> }[] = [
  ...AT_ROWS.map((rows) => ({
    when: `at row ${rows} of its progress`,
    come: (child: ChildProcess) => rowsPrinted(child, rows),
  })),
  ...AFTER_FOLDER.map((ms) => ({
    when: `${ms} ms after its folder is made`,
    come: async (child: ChildProcess) => {
      await folderMade(child);
      await setTimeout(ms);
    },
  })),
];

test('a make killed at any moment leaves a whole set, old or new, and the next run succeeds', async () => {
  const killed: string[] = [];
  for (const { when, come } of MOMENTS) {
    const { child, ended } = start(...NEW);
    await come(child);
    child.kill('SIGKILL');
    if ((await ended).signal === 'SIGKILL') killed.push(when);
    // what swaps the folders ends what it began, which takes it a moment
    await vi.waitFor(
      () => {
        const found = hashes(set);
        const { 'files.sha256': _, ...others } = found;
        expect(listed(set), when).toEqual(others);
        expect([oldSet, newSet], when).toContainEqual(found);
      },
      { timeout: 5_000, interval: 20 },
    );
    expect((await run(...OLD)).status, when).toBe(0);
    expect(hashes(set), when).toEqual(oldSet);
    expect(readdirSync(out), when).toEqual(['pair']);
  }
  // later ones may come too late on a busy machine
  expect(killed).toEqual(expect.arrayContaining(MOMENTS.slice(0, many(3, 4)).map(({ when }) => when)));
}, 300_000);

test.each(['SIGINT', 'SIGTERM'] as const)(
  '%s while the files are written is obeyed when they are, and nothing hidden is left',
  async (signal) => {
    const { child, ended } = start(...NEW);
    await folderMade(child);
    child.kill(signal);
    // it may come too late on a busy machine
    expect([signal, null]).toContain((await ended).signal);
    expect(readdirSync(out)).toEqual(['pair']);
    expect(hashes(set)).toEqual(newSet);
  },
);

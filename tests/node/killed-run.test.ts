import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { setTimeout } from 'node:timers/promises';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { writeFolder } from '../../src/node/output-folder.js';
import { many } from '../properties/seed.js';

const KILLS = many(16, 100);
/** Few and short: most of a writing's time is the swap, where a kill could do harm. */
const FILES = 8;

const root = path.resolve(import.meta.dirname, '../..');
let work = '';

beforeAll(async () => {
  work = fs.mkdtempSync(path.join(os.tmpdir(), 'killed-run-'));
  await build({
    stdin: {
      contents: `import { writeFolder } from './src/node/output-folder.js';
        // a test that is itself killed leaves no writer behind
        const parent = process.ppid;
        for (let set = 0; process.ppid === parent; set++) {
          const bytes = new TextEncoder().encode(process.argv[3] + ' ' + set + ' '.repeat(2000));
          const files = Array.from({ length: ${FILES} }, (_, i) => ({ path: 'parts/' + i + '.stl', bytes }));
          writeFolder(process.argv[2], 'stool', files);
          process.stdout.write('written');
        }`,
      resolveDir: root,
    },
    outfile: path.join(work, 'run.mjs'),
    bundle: true,
    format: 'esm',
    platform: 'node',
    packages: 'external',
    logLevel: 'warning',
  });
  // packages are found from there as from here
  fs.symlinkSync(path.join(root, 'node_modules'), path.join(work, 'node_modules'));
});

afterAll(() => fs.rmSync(work, { recursive: true, force: true }));

/** The texts of a folder's files, after every one was checked against the folder's list. */
function wholeSet(folder: string): Set<string> {
  const rows = fs.readFileSync(path.join(folder, 'files.sha256'), 'utf8').trim().split('\n');
  expect(rows).toHaveLength(FILES);
  return new Set(
    rows.map((row) => {
      const [hash, file] = row.split('  ') as [string, string];
      const bytes = fs.readFileSync(path.join(folder, file));
      expect(createHash('sha256').update(bytes).digest('hex')).toBe(hash);
      return bytes.toString().trim();
    }),
  );
}

/** Settles when a set was written. */
const written = (child: ReturnType<typeof spawn>) =>
  new Promise<void>((resolve, reject) => {
    child.stdout!.once('data', () => resolve());
    child.once('exit', (code) => reject(new Error(`the run ended with ${code} before it was killed`)));
  });

/** Runs that are killed side by side, each over a folder of its own: most of a kill is waiting. */
const LANES = 3;

async function killed(kill: number, out: string): Promise<void> {
  const child = spawn(process.execPath, [path.join(work, 'run.mjs'), out, `run ${kill}`], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await written(child);
  const began = performance.now();
  await written(child);
  // spread over one writing, however long it takes on this machine
  await setTimeout((((kill * 37) % 149) / 149) * (performance.now() - began));
  const ended = new Promise((resolve) => child.once('close', resolve));
  child.kill('SIGKILL');
  await ended;
  // what swaps the folders ends what it began, which takes it a moment
  const folder = path.join(out, 'stool');
  await vi.waitFor(() => expect(wholeSet(folder).size).toBe(1), { timeout: 5_000, interval: 20 });
}

test(`a run killed at any moment leaves the old set or the new one in view (${KILLS} kills)`, async () => {
  const lanes = Array.from({ length: LANES }, (_, lane) => path.join(work, `out ${lane}`));
  await Promise.all(
    lanes.map(async (out, lane) => {
      for (let kill = lane; kill < KILLS; kill += LANES) await killed(kill, out);
    }),
  );
  for (const out of lanes) {
    writeFolder(out, 'stool', [{ path: 'last.txt', bytes: new Uint8Array() }]);
    expect(fs.readdirSync(out)).toEqual(['stool']);
    expect(fs.readdirSync(path.join(out, 'stool')).sort()).toEqual(['files.sha256', 'last.txt']);
  }
}, 600_000);

test('two runs at once end with one whole set and no leftovers', async () => {
  const out = path.join(work, 'shared');
  const runs = ['left', 'right'].map((name) =>
    spawn(process.execPath, [path.join(work, 'run.mjs'), out, name], { stdio: ['ignore', 'pipe', 'pipe'] }),
  );
  const said = runs.map((run) => {
    let text = '';
    run.stderr.on('data', (piece) => {
      text += piece;
    });
    return () => text;
  });
  const closed = runs.map((run) => new Promise((resolve) => run.once('close', resolve)));
  await setTimeout(1500);
  for (const run of runs) run.kill('SIGKILL');
  await Promise.all(closed);
  expect(said.map((text) => text())).toEqual(['', '']);
  // a swap that had begun goes on by itself after the kill: what it leaves, the next run clears away
  for (let run = 0; run < 10; run += 1) {
    await setTimeout(300);
    writeFolder(out, 'stool', [{ path: 'last.txt', bytes: new Uint8Array([run]) }]);
    if (fs.readdirSync(out).length === 1) break;
  }
  expect(fs.readdirSync(out)).toEqual(['stool']);
});

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { afterAll, expect, test } from 'vitest';

const root = path.resolve(import.meta.dirname, '../..');
const out = mkdtempSync(path.join(tmpdir(), 'tenonwright-nudged-'));
afterAll(() => rmSync(out, { recursive: true, force: true }));

/** Files of the frame by an engine whose sines and the like are off by a share of themselves. */
function made(by: number, ...options: readonly string[]): Map<string, string> {
  const { status, stderr } = spawnSync(
    process.execPath,
    [
      '--import',
      './tests/files/nudged.mjs',
      'dist/src/cli/bin.js',
      'make',
      'frame',
      '--quiet',
      '--out',
      path.join(out, String(by)),
      ...options,
    ],
    { cwd: root, encoding: 'utf8', env: { ...process.env, NUDGED_BY: String(by) } },
  );
  if (status !== 0) throw new Error(stderr);
  const folder = path.join(out, String(by), 'frame');
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  return new Map(
    files.map(({ name, parentPath }) => {
      const file = path.join(parentPath, name);
      return [path.relative(folder, file), readFileSync(file, 'latin1')];
    }),
  );
}

test('an engine that is off in the last digit of its sines writes the same files; one that is off by a millionth does not', () => {
  const own = made(0);
  expect(own.size).toBeGreaterThan(20);
  const others = (from: Map<string, string>) =>
    [...own].filter(([name, is]) => from.has(name) && from.get(name) !== is).map(([name]) => name);
  const nudged = made(2 ** -52);
  expect([...nudged.keys()]).toEqual([...own.keys()]);
  expect(others(nudged)).toEqual([]);
  // the other direction: what is off by more than is written does reach the files
  expect(others(made(1e-6, '--only', 'glb,dxf')).length).toBeGreaterThan(0);
});

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { afterAll, expect, test } from 'vitest';
import { madeByProgram } from '../process/made-by-program.js';
import { many } from '../properties/seed.js';

const root = path.resolve(import.meta.dirname, '../..');
const out = mkdtempSync(path.join(tmpdir(), 'tenonwright-nudged-'));
afterAll(() => rmSync(out, { recursive: true, force: true }));

/** Files of a design by an engine whose sines and the like are off by a share of themselves. */
function made(design: string, by: number, ...options: readonly string[]): Map<string, string> {
  const { status, stderr } = spawnSync(
    process.execPath,
    [
      '--import',
      './tests/files/nudged.mjs',
      'dist/src/cli/bin.js',
      'make',
      '--out',
      path.join(out, String(by)),
      ...options,
      '--quiet',
      design,
    ],
    { cwd: root, encoding: 'utf8', env: { ...process.env, NUDGED_BY: String(by) } },
  );
  if (status !== 0) throw new Error(stderr);
  return filesOf(path.join(out, String(by), design));
}

/** What a folder holds, by path. */
function filesOf(folder: string): Map<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  return new Map(
    files.map(({ name, parentPath }) => {
      const file = path.join(parentPath, name);
      return [path.relative(folder, file), readFileSync(file, 'latin1')];
    }),
  );
}

/** Files of a design by the engine as it is. */
async function plain(design: string): Promise<Map<string, string>> {
  return filesOf((await madeByProgram(design)).folder);
}

const others = (own: Map<string, string>, from: Map<string, string>): readonly string[] =>
  [...own].filter(([name, is]) => from.has(name) && from.get(name) !== is).map(([name]) => name);

// sides that mirror each other, raked: nearly every choice between them is a tie
const DESIGNS = ['stool', 'raked-bench'].slice(0, many(1, 2));

test.each(DESIGNS)(
  'an engine that is off in the last digit of its sines writes the same files of the %s',
  async (design) => {
    const own = await plain(design);
    expect(own.size).toBeGreaterThan(20);
    const nudged = made(design, 2 ** -52);
    expect([...nudged.keys()]).toEqual([...own.keys()]);
    expect(others(own, nudged)).toEqual([]);
  },
);

test('an engine that is off by a millionth writes others', async () => {
  // the other direction: what is off by more than is written does reach the files
  const [own, nudged] = [await plain('frame'), made('frame', 1e-6, '--only', 'glb,dxf')];
  expect(others(own, nudged).filter((name) => /\.(?:glb|dxf)$/.test(name)).length).toBeGreaterThan(0);
});

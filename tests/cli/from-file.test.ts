import { spawnSync } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { atDesk } from './desk.js';

let cwd: string;

beforeAll(async () => {
  cwd = await mkdtemp(join(tmpdir(), 'tenonwright-'));
});

afterAll(() => rm(cwd, { recursive: true }));

const checkFrom = async (yaml: string, ...options: string[]) => {
  await writeFile(join(cwd, 'stool.yaml'), yaml);
  return atDesk(['check', 'small', '--from', 'stool.yaml', ...options], { cwd });
};

test('a YAML file gives many parameters, in either spelling of their names', async () => {
  const ran = await checkFrom('seat-length: 9-1/16"\nrailHeight: 50\nwedged: yes\nsplay: -3\nrows: 2\n');
  expect(ran.asked[0]![1].values).toMatchObject({
    seatLength: 230.1875,
    railHeight: 50,
    wedged: true,
    splay: -3,
    rows: 2,
  });
});

test('an option wins over the file, whichever spelling the file uses', async () => {
  for (const name of ['seat-length', 'seatLength']) {
    const ran = await checkFrom(`${name}: 200\ntenons: 3\n`, '--seat-length', '310');
    expect(ran.asked[0]![1].values).toMatchObject({ seatLength: 310, tenons: 3 });
  }
});

test('bare numbers of the file are in the units of the run', async () => {
  const ran = await checkFrom('seat-length: 10\n', '--units', 'in');
  expect(ran.asked[0]![1].values).toMatchObject({ seatLength: 254 });
});

test('an empty file changes nothing', async () => {
  expect((await checkFrom('# nothing yet\n')).asked[0]![1].values).toMatchObject({ seatLength: 230 });
});

/** Nine lists of nine of the one before: 387 million values when they are written out. */
const ALIASES_OF_ALIASES = `a: &a [1,1,1,1,1,1,1,1,1]\n${[...'bcdefghi']
  .map((name, i) => `${name}: &${name} [${Array(9).fill(`*${'abcdefgh'[i]}`)}]\n`)
  .join('')}`;

const REFUSED: readonly (readonly [yaml: string, message: RegExp])[] = [
  ['seat-length: 200\n---\nsplay: 3\n', /holds more than one document: leave out the line ---/],
  ['seat-legnth: 200\n', /no parameter 'seat-legnth': did you mean seat-length\?/],
  ['seat-length: 200\nseatLength: 210\n', /seat-length is given twice/],
  ['seat-length: 200\nseat-length: 210\n', /stool\.yaml is not YAML/],
  ['seat-length: *nowhere\n', /stool\.yaml is not YAML.*nowhere/],
  [ALIASES_OF_ALIASES, /stool\.yaml is not YAML: .*alias/],
  [`${'# a line that says nothing\n'.repeat(60_000)}`, /stool\.yaml holds 2 MB; 1 MB is the limit/],
  [
    Array.from({ length: 10_001 }, (_, i) => `key-${i}: 1\n`).join(''),
    /holds 10001 values; 10000 is the limit/,
  ],
  ['seat-length: [200\n', /stool\.yaml is not YAML/],
  ['seat-length:\n', /seat-length is empty/],
  ['seat-length: [200]\n', /seat-length is a list/],
  ['seat-length: .inf\n', /seat-length cannot be read/],
  ['- 200\n', /stool\.yaml holds no parameters/],
  ['two hundred\n', /stool\.yaml holds no parameters/],
];

test.each(REFUSED.map(([yaml, message]) => [message, yaml] as const))(
  'a file is refused: %s',
  async (message, yaml) => {
    const ran = await checkFrom(yaml);
    expect(ran.status).toBe(2);
    expect(ran.err).toMatch(message);
    expect(ran.err).not.toMatch(/\bat .*:\d+:\d+/);
  },
);

test('a file that is not there is told by name', async () => {
  const ran = await atDesk(['check', 'small', '--from', 'stol.yaml'], { cwd });
  expect(ran.status).toBe(2);
  expect(ran.err).toMatch(/stol\.yaml cannot be read \(ENOENT\)/);
});

test('a pipe is not waited for, and a folder is no file', async () => {
  expect(spawnSync('mkfifo', [join(cwd, 'pipe')]).status).toBe(0);
  for (const name of ['pipe', '.']) {
    const ran = await atDesk(['check', 'small', '--from', name], { cwd });
    expect(ran.status).toBe(2);
    expect(ran.err).toContain(`${name} is not a regular file: give the path of a YAML file`);
  }
});

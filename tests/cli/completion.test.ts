import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { afterAll, expect, test } from 'vitest';
import { atDesk } from './desk.js';

/** What is offered at the end of a line, asked as the shell's script asks. */
const offered = async (...typed: string[]): Promise<readonly string[]> => {
  const { status, out } = await atDesk(['--get-yargs-completions', 'tenonwright', ...typed]);
  expect(status).toBe(0);
  return out.split('\n').filter((word) => word !== '');
};

test('at each place of a line the words are offered that may stand there', async () => {
  expect(await offered('ma')).toEqual(['make']);
  expect(await offered('')).toEqual(
    expect.arrayContaining(['list', 'describe', 'make', 'check', 'shop', 'completion']),
  );
  expect(await offered('make', 'sm')).toEqual(['small']);
  expect(await offered('make', 'small', '--seat')).toEqual(['--seat-length']);
  expect(await offered('make', 'small', '--seat-length', '')).toEqual([]);
  expect(await offered('make', 'small', '--edge', '')).toEqual(['round', 'square']);
  expect(await offered('make', 'small', '--edge', 'round', '--ed')).toEqual([]);
  expect(await offered('make', 'nothing-of-the-kind', '--for')).toEqual(['--format', '--force']);
  expect(await offered('no-command', '--x')).toEqual([]);
});

const folder = mkdtempSync(path.join(tmpdir(), 'tenonwright-completion-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('bash takes the script and completes with it', async () => {
  const { status, out } = await atDesk(['completion']);
  expect(status).toBe(0);
  const bin = path.resolve(import.meta.dirname, '../../dist/src/cli/bin.js');
  writeFileSync(path.join(folder, 'script'), out);
  writeFileSync(path.join(folder, 'tenonwright'), `#!/bin/sh\nexec "${process.execPath}" "${bin}" "$@"\n`, {
    mode: 0o755,
  });
  expect(spawnSync('bash', ['-n', path.join(folder, 'script')]).status).toBe(0);
  const completed = execFileSync(
    'bash',
    [
      '-c',
      `. "${folder}/script"; COMP_WORDS=(tenonwright make stool --woo); COMP_CWORD=3; _tenonwright_yargs_completions; echo "\${COMPREPLY[@]}"`,
    ],
    { encoding: 'utf8', env: { ...process.env, PATH: `${folder}:${process.env.PATH}` } },
  );
  expect(completed.trim()).toBe('--wood');
});

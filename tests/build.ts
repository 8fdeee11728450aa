import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import process from 'node:process';
import type { TestProject } from 'vitest/node';

/**
 * Builds the program before any test, and makes the folder of what is made once for all of them; what it returns deletes it.
 *
 * @throws Error when the compiler cannot write the program
 */
export default function beforeAll(project: TestProject): () => void {
  build();
  const folder = mkdtempSync(path.join(tmpdir(), 'tenonwright-once-'));
  project.provide('onceARun', folder);
  // a browser that is ended may still write
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 });
}

/** The program and its preview page's script. Types are a check of their own: a wrong one does not keep the tests from running. */
function build(): void {
  // planted faults are looked for in the sources: the program built before stays as it is
  if (process.env.TENONWRIGHT_BUILT === '1') return;
  const steps = [
    ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.build.json', '--noCheck'],
    ['scripts/prune-dist.mjs'],
    ['scripts/build-viewer.mjs'],
    ['scripts/build-living.mjs'],
    ['scripts/pack-program.mjs'],
  ];
  for (const step of steps) {
    const { status, stdout, stderr } = spawnSync(process.execPath, step, { encoding: 'utf8' });
    if (status !== 0) throw new Error(`the program could not be built:\n${stdout}${stderr}`);
  }
}

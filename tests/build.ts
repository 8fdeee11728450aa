import { spawnSync } from 'node:child_process';
import process from 'node:process';

/**
 * Builds the program and its preview page's script once before any test. Types are a check of their own (`npm run types`), so a
 * wrong type does not keep the tests from running.
 *
 * @throws Error when the compiler cannot write the program
 */
export default function build(): void {
  // planted faults are looked for in the sources: the program built before stays as it is
  if (process.env.TENONWRIGHT_BUILT === '1') return;
  const steps = [
    ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.build.json', '--noCheck'],
    ['scripts/prune-dist.mjs'],
    ['scripts/build-viewer.mjs'],
    ['scripts/pack-program.mjs'],
  ];
  for (const step of steps) {
    const { status, stdout, stderr } = spawnSync(process.execPath, step, { encoding: 'utf8' });
    if (status !== 0) throw new Error(`the program could not be built:\n${stdout}${stderr}`);
  }
}

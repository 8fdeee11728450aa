import { spawnSync } from 'node:child_process';
import process from 'node:process';

/**
 * Builds the program once before any test starts it as a process. Types are a check of their own (`npm run types`), so a
 * wrong type does not keep the tests from running.
 *
 * @throws Error when the compiler cannot write the program
 */
export default function build(): void {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.build.json', '--noCheck'],
    { encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(`the program could not be built:\n${stdout}${stderr}`);
}

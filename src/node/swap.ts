import { type SpawnSyncOptionsWithStringEncoding, spawnSync } from 'node:child_process';
import { renameSync } from 'node:fs';
import process from 'node:process';

/** What `swapFolders` runs: on its own feet, so that it ends what it began whatever becomes of the run. */
const RENAMES = `
const { renameSync } = require('node:fs');
const [folder, aside, fresh] = process.argv.slice(1);
try {
  renameSync(folder, aside);
  try {
    renameSync(fresh, folder);
  } catch (error) {
    try { renameSync(aside, folder); } catch {}
    throw error;
  }
} catch (error) {
  process.stdout.write(error.code || 'EIO');
}`;

/** The same by the system's shell, in a tenth of the time where its `mv` can be told that no target is a folder to move into. */
const MOVES = 'mv -fT -- "$1" "$2" && { mv -fT -- "$3" "$1" || { mv -fT -- "$2" "$1"; exit 1; }; }';

/**
 * Moves `folder` to `aside` and `fresh` into its place: both or, as far as other runs allow, none.
 *
 * No file system call Node offers exchanges two folders, and a run killed between two renames would leave no folder in view. So
 * both are done by a small process of its own session, which the killing of the run, or Ctrl-C, does not reach.
 *
 * @returns the system's code when it was refused; undefined when it was done
 */
export function swapFolders(folder: string, aside: string, fresh: string): string | undefined {
  const paths = [folder, aside, fresh];
  if (apart('/bin/sh', ['-c', MOVES, 'sh', ...paths]).status === 0) return undefined;
  // refused, and nothing moved: this one says why
  const { status, stdout } = apart(process.execPath, ['-e', RENAMES, '--', ...paths]);
  if (status === 0) return stdout === '' ? undefined : stdout;
  // no process to be had: done here, as nearly at once as it can be
  try {
    renameSync(folder, aside);
    renameSync(fresh, folder);
    return undefined;
  } catch (error) {
    return error instanceof Error && 'code' in error ? String(error.code) : 'EIO';
  }
}

const apart = (program: string, args: readonly string[]) =>
  spawnSync(program, args, {
    detached: true,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
    windowsHide: true,
  } as SpawnSyncOptionsWithStringEncoding);

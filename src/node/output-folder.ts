import {
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import process from 'node:process';
import { OutputError } from '../errors.js';
import { LIST, type OutputFile, requireDistinct, requireSafePath } from '../files/index.js';
import { listOf, requireOwned } from './owned-files.js';

/** How often a set is put in place again after another run of the program was quicker. */
const TRIES = 20;

/**
 * Writes a set of files as the folder `out/name`, whole or not at all, in place of the set written there before.
 *
 * The set is written into a hidden sibling, with the list `files.sha256` of its hashes; then the old folder is renamed aside, the new
 * one renamed into its place and the old one deleted. A run that is killed while writing leaves the old set as it was; one killed
 * between the two renames leaves the old set whole in the hidden sibling, and the next run puts it back before it does anything
 * else. Siblings carry the process number: what dead runs left is cleaned up, what a living run is writing is left alone, and of
 * two runs at once the later set stays. Files are not flushed to the disk: a power cut is not covered.
 *
 * @param out made when it does not exist
 * @param name of the folder; letters, digits, dashes
 * @returns path of the folder
 * @throws OutputError when the folder holds anything this tool did not write or that was changed since, when a path leaves
 * the folder or two are the same, or when the system refuses to write
 */
export function writeFolder(out: string, name: string, files: readonly OutputFile[]): string {
  requireSafePath(name);
  for (const { path } of files) requireSafePath(path);
  requireDistinct([...files.map(({ path }) => path), LIST]);
  const folder = join(out, name);
  return asOutputError(folder, () => {
    makeFolder(out);
    clearUp(out, name);
    requireReplaceable(folder);
    const fresh = sibling(out, name, 'new', process.pid);
    try {
      mkdirSync(fresh);
      for (const { path, bytes } of [...files, { path: LIST, bytes: listOf(files) }]) {
        const target = join(fresh, path);
        mkdirSync(dirname(target), { recursive: true });
        writeFileSync(target, bytes, { flag: 'wx' });
      }
      putInPlace(fresh, folder, out, name);
    } finally {
      rmSync(fresh, { recursive: true, force: true });
    }
    return folder;
  });
}

/**
 * Refuses an output folder that cannot be written, before the work for it is done; nothing is made or changed.
 *
 * @throws OutputError when the nearest thing that exists on the way to it is no folder, or `out/name` holds anything this tool
 * did not write
 */
export function requireOutFolder(out: string, name: string): void {
  const folder = join(out, name);
  asOutputError(folder, () => {
    let at = out;
    // what lies below a file is there no more than what is nowhere
    while (!existsSync(at) && !isLink(at)) at = dirname(at);
    if (!isFolder(at)) throw notAFolder(at);
    requireReplaceable(folder);
  });
}

/** Makes a folder and those above it one by one: asked for all at once, the system can go on trying for ever (seen in /proc). */
function makeFolder(path: string): void {
  if (isFolder(path)) return;
  if (existsSync(path) || isLink(path)) throw notAFolder(path);
  makeFolder(dirname(path));
  try {
    mkdirSync(path);
  } catch (error) {
    // another run was quicker
    if (!isFolder(path)) throw error;
  }
}

const isFolder = (path: string): boolean => existsSync(path) && statSync(path).isDirectory();

/** Whether a link stands at a path, a dangling one included. */
const isLink = (path: string): boolean =>
  isFolder(dirname(path)) && lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true;

const notAFolder = (path: string): OutputError =>
  new OutputError(
    'out-not-a-folder',
    `${path} is not a folder, so nothing can be written in it: choose another output folder`,
  );

/** Fails early, before anything is written; what another run puts in place during the look is looked at again. */
function requireReplaceable(folder: string): void {
  for (let tries = 1; ; tries++) {
    const before = identity(folder);
    if (before === undefined) return;
    try {
      requireOwned(folder, folder);
      return;
    } catch (error) {
      if (identity(folder) === before || tries === TRIES) throw error;
    }
  }
}

/** What tells a folder from another one renamed into its place. */
function identity(path: string): string | undefined {
  const is = lstatSync(path, { bigint: true, throwIfNoEntry: false });
  return is && `${is.ino} ${is.birthtimeNs}`;
}

function putInPlace(fresh: string, folder: string, out: string, name: string): void {
  const aside = sibling(out, name, 'old', process.pid);
  for (let tries = 1; ; tries++) {
    const replaced = present(folder) && moved(folder, aside);
    try {
      // once more, now that nobody writes there: a file saved meanwhile must not be lost
      if (replaced) requireOwned(aside, folder);
    } catch (error) {
      if (!present(folder)) renameSync(aside, folder);
      throw error;
    }
    try {
      renameSync(fresh, folder);
    } catch (error) {
      // ENOTEMPTY and EEXIST say that a set stood there, even when the run that put it there has moved it aside since
      const taken = isTaken(error) && (present(folder) || ['ENOTEMPTY', 'EEXIST'].includes(codeOf(error)!));
      if (!taken || tries === TRIES) {
        if (replaced && !present(folder)) renameSync(aside, folder);
        throw error;
      }
      // another run put its set here first: it is replaced in the next round
    }
    if (replaced) discard(aside, out, name);
    if (!present(fresh)) return;
  }
}

/** Renames, unless another run has just renamed it itself. */
function moved(from: string, to: string): boolean {
  try {
    renameSync(from, to);
    return true;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return false;
    throw error;
  }
}

/** Puts back a set a killed run had moved aside, and deletes what killed runs left. */
function clearUp(out: string, name: string): void {
  const folder = join(out, name);
  // `gone` comes first in the alphabet: its name is free again before anything else is discarded
  for (const entry of readdirSync(out).sort()) {
    const left = SIBLING.exec(entry);
    if (left?.[1] !== name || isAlive(Number(left[3]))) continue;
    const path = join(out, entry);
    if (!lstatSync(path, { throwIfNoEntry: false })?.isDirectory()) continue;
    try {
      if (left[2] === 'old') {
        if (!present(folder)) {
          renameSync(path, folder);
          continue;
        }
        requireOwned(path, path);
      }
      discard(path, out, name);
    } catch (error) {
      // another run cleaned it up, or put a set in place first: then it is no longer ours to settle
      if (present(path) && !(isTaken(error) && present(folder))) throw error;
    }
  }
}

/** Deletes a set; renamed first, so that one deleted by half is not taken for one to put back or to be looked through. */
function discard(path: string, out: string, name: string): void {
  const gone = sibling(out, name, 'gone', process.pid);
  if (path !== gone) renameSync(path, gone);
  rmSync(gone, { recursive: true, force: true });
}

const sibling = (out: string, name: string, kind: 'new' | 'old' | 'gone', pid: number): string =>
  join(out, `.${name}.tenonwright-${kind}-${pid}`);

const SIBLING = /^\.(.+)\.tenonwright-(new|old|gone)-(\d+)$/;

/** Whether another process with this number runs; this one is not in the middle of anything. */
function isAlive(pid: number): boolean {
  if (pid === process.pid) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
}

/** Whether anything stands at a path, a dangling link included. */
const present = (path: string): boolean =>
  existsSync(path) || lstatSync(path, { throwIfNoEntry: false }) !== undefined;

const isTaken = (error: unknown): boolean =>
  ['ENOTEMPTY', 'EEXIST', 'EPERM', 'ENOTDIR'].includes(codeOf(error) ?? '');

const codeOf = (error: unknown): string | undefined =>
  error instanceof Error && 'code' in error ? String(error.code) : undefined;

/** The system's refusals are the person's to settle; everything else is passed on as it is. */
function asOutputError<T>(folder: string, write: () => T): T {
  try {
    return write();
  } catch (error) {
    const code = codeOf(error);
    if (
      error instanceof OutputError ||
      code === undefined ||
      !(error instanceof Error && 'syscall' in error)
    ) {
      throw error;
    }
    throw new OutputError(
      'cannot-write',
      `${folder} cannot be written, the system answers ${code} (${error.message}): choose an output folder you may write to, with room left`,
    );
  }
}

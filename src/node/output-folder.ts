import {
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import process from 'node:process';
import { OutputError } from '../errors.js';
import { LIST, type OutputFile, requireDistinct, requireSafePath } from '../files/index.js';
import { withSignalsHeld } from './held-signals.js';
import { isAsSeen, listOf, requireOwned, type Seen, seenIn } from './owned-files.js';
import { swapFolders } from './swap.js';

/** How often a set is put in place again after another run of the program was quicker. */
const TRIES = 20;

/**
 * Writes a set of files as the folder `out/name`, whole or not at all, in place of the set written there before.
 *
 * The set is written into a hidden sibling, with the list `files.sha256` of its hashes; then the two folders are swapped and the
 * old one is deleted. A run killed at any moment leaves the old set or the new one in view; Ctrl-C waits for the end of the
 * writing. Siblings carry the process number: what dead runs left is cleaned up, what a living run is writing is left alone, and
 * of two runs at once the later set stays. Files are not flushed to the disk: a power cut is not covered.
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
  const write = (): string => {
    makeFolder(out);
    clearUp(out, name);
    const seen = requireReplaceable(folder);
    const fresh = sibling(out, name, 'new', process.pid);
    try {
      mkdirSync(fresh);
      for (const { path, bytes } of [...files, { path: LIST, bytes: listOf(files) }]) {
        const target = join(fresh, path);
        mkdirSync(dirname(target), { recursive: true });
        writeFileSync(target, bytes, { flag: 'wx' });
      }
      putInPlace(fresh, folder, out, name, seen);
    } finally {
      rmSync(fresh, { recursive: true, force: true });
    }
    return folder;
  };
  return withSignalsHeld(() => asOutputError(folder, write));
}

/**
 * Refuses an output folder that cannot be written, before the work for it is done; nothing is left there.
 *
 * @throws OutputError when the nearest thing that exists on the way to it is no folder or takes no new one, or `out/name` holds
 * anything this tool did not write
 */
export function requireOutFolder(out: string, name: string): void {
  const folder = join(out, name);
  asOutputError(folder, () => {
    let at = out;
    // what lies below a file is there no more than what is nowhere
    while (!existsSync(at) && !isLink(at)) at = dirname(at);
    if (!isFolder(at)) throw notAFolder(at);
    requireReplaceable(folder);
    // rights alone do not tell: tried
    const trial = sibling(at, name, 'gone', process.pid);
    mkdirSync(trial);
    rmdirSync(trial);
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

/**
 * Fails early, before anything is written; what another run puts in place during the look is looked at again.
 *
 * @returns what stands there, undefined when nothing does
 */
function requireReplaceable(folder: string): Seen | undefined {
  for (let tries = 1; ; tries++) {
    const before = identity(folder);
    if (before === undefined) return undefined;
    try {
      if (!isFolder(folder) || isLink(folder)) requireOwned(folder, folder);
      // before the files are read: a change made meanwhile is seen later
      const seen = seenIn(folder);
      requireOwned(folder, folder);
      return seen;
    } catch (error) {
      // a swap that found its new set gone puts the old one back: the same folder, away for a moment
      const away = codeOf(error) === 'ENOENT';
      if ((identity(folder) === before && !away) || tries === TRIES) throw error;
    }
  }
}

/** What tells a folder from another one renamed into its place. */
function identity(path: string): string | undefined {
  const is = lstatSync(path, { bigint: true, throwIfNoEntry: false });
  return is && `${is.ino} ${is.birthtimeNs}`;
}

/** @param seen what stood in `folder` when its files were last looked through */
function putInPlace(fresh: string, folder: string, out: string, name: string, seen: Seen | undefined): void {
  const aside = sibling(out, name, 'old', process.pid);
  let known = seen;
  for (let tries = 1; ; tries++) {
    const code = present(folder) ? swapped() : placed();
    if (code === undefined) return;
    // another run moved its set away or put it here first: it is looked at in the next round
    if (!TAKEN.includes(code) && code !== 'ENOENT') throw refusedBySystem(folder, code);
    if (tries === TRIES || !present(fresh)) throw refusedBySystem(folder, code);
    if (present(aside)) settle();
  }

  /** A set that was moved aside for nothing: put back, or done with when another run's stands in its place. */
  function settle(): void {
    if (!present(folder) && moved(aside, folder)) return;
    requireOwned(aside, folder);
    discard(aside, out, name);
  }

  function placed(): string | undefined {
    try {
      renameSync(fresh, folder);
      return undefined;
    } catch (error) {
      return codeOf(error) ?? 'EIO';
    }
  }

  function swapped(): string | undefined {
    if (known === undefined || !asSeen(folder, known)) known = requireReplaceable(folder);
    const code = swapFolders(folder, aside, fresh);
    if (code !== undefined) return code;
    try {
      // once more, now that nobody writes there: a file saved meanwhile must not be lost
      if (known === undefined || !asSeen(aside, known)) requireOwned(aside, folder);
    } catch (error) {
      if (present(aside)) swapFolders(folder, fresh, aside);
      throw error;
    }
    discard(aside, out, name);
    return undefined;
  }
}

/** Renames, unless another run was quicker. */
function moved(from: string, to: string): boolean {
  try {
    renameSync(from, to);
    return true;
  } catch (error) {
    if (isTaken(error)) return false;
    throw error;
  }
}

/** `isAsSeen`, and false for a folder another run has just moved. */
function asSeen(folder: string, seen: Seen): boolean {
  try {
    return isAsSeen(folder, seen);
  } catch {
    return false;
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

/** What the system answers when a set of another run stands in the way. */
const TAKEN: readonly string[] = ['ENOTEMPTY', 'EEXIST', 'EPERM', 'ENOTDIR'];

const isTaken = (error: unknown): boolean => TAKEN.includes(codeOf(error) ?? '');

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
    throw refusedBySystem(folder, `${code} (${error.message})`);
  }
}

const refusedBySystem = (folder: string, answer: string): OutputError =>
  new OutputError(
    'cannot-write',
    `${folder} cannot be written (the system says ${answer}): choose an output folder with room left that you may write to`,
  );

import { type ChildProcess, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { afterAll } from 'vitest';

export const PROGRAM = path.resolve(import.meta.dirname, '../../dist/src/cli/bin.js');

/** How a run ended and what it printed. */
export interface Ended {
  readonly status: number | null;
  readonly signal: string | null;
  readonly out: string;
  readonly err: string;
}

/** Starts the built program as its own process; the promise settles when it has ended and all it printed is here. */
export function start(...args: readonly string[]): {
  readonly child: ChildProcess;
  readonly ended: Promise<Ended>;
} {
  const child = spawn(process.execPath, [PROGRAM, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  const text = { out: '', err: '' };
  child.stdout.setEncoding('utf8').on('data', (piece: string) => {
    text.out += piece;
  });
  child.stderr.setEncoding('utf8').on('data', (piece: string) => {
    text.err += piece;
  });
  const ended = new Promise<Ended>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (status, signal) => resolve({ status, signal, ...text }));
  });
  return { child, ended };
}

/** Runs the built program to its end. */
export const run = (...args: readonly string[]): Promise<Ended> => start(...args).ended;

/** A folder of the test file's own, deleted after its tests. */
export function ownFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'tenonwright-process-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Paths of all files below a folder, sorted. */
export const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
    .sort();

export const hashOf = (file: string): string => createHash('sha256').update(readFileSync(file)).digest('hex');

/** The hash of every file below a folder, by its path. */
export const hashes = (folder: string): Readonly<Record<string, string>> =>
  Object.fromEntries(filesIn(folder).map((file) => [file, hashOf(path.join(folder, file))]));

/** What a folder's own list says of each file. */
export const listed = (folder: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readFileSync(path.join(folder, 'files.sha256'), 'utf8')
      .trim()
      .split('\n')
      .map((row) => row.split('  ').toReversed()),
  );

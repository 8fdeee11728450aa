import { createHash } from 'node:crypto';
import { type Dirent, existsSync, lstatSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { OutputError } from '../errors.js';
import { LIST, type OutputFile } from '../files/index.js';

/** SHA-256 in hexadecimal, by the system's own code: whole folders are looked through with it. */
export const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** The list of a set of files, in their order: hash, two blanks, path. */
export const listOf = (files: readonly OutputFile[]): Uint8Array =>
  new TextEncoder().encode(files.map(({ path, bytes }) => `${sha256(bytes)}  ${path}\n`).join(''));

/** Files that file managers leave in any folder they show; nobody misses them. */
const LITTER: ReadonlySet<string> = new Set(['.ds_store', 'thumbs.db', 'desktop.ini', '.directory']);

const isLitter = (entry: Dirent): boolean => entry.isFile() && LITTER.has(entry.name.toLowerCase());

/** What tells each thing in a folder from another put there since, by path: cheap to look at again. */
export type Seen = ReadonlyMap<string, string>;

/** Inode, size and time of everything in a folder. */
export function seenIn(folder: string): Seen {
  const seen = new Map<string, string>();
  const visit = (below: string): void => {
    for (const entry of readdirSync(join(folder, below), { withFileTypes: true })) {
      if (isLitter(entry)) continue;
      const path = below === '' ? entry.name : `${below}/${entry.name}`;
      if (entry.isDirectory()) {
        seen.set(path, 'folder');
        visit(path);
        continue;
      }
      const { ino, size, mtimeNs } = lstatSync(join(folder, path), { bigint: true });
      seen.set(path, `${ino} ${size} ${mtimeNs}`);
    }
  };
  visit('');
  return seen;
}

/** Whether a folder holds what it held, wherever it was moved. */
export function isAsSeen(folder: string, before: Seen): boolean {
  const now = seenIn(folder);
  return now.size === before.size && [...now].every(([path, is]) => before.get(path) === is);
}

/**
 * Makes sure that everything in a folder was written by this tool and is as it was written, so that it may be replaced. A
 * file of the list that is gone is no obstacle.
 *
 * @param folder an existing path
 * @param shown what the person calls it
 * @throws OutputError naming the first file that would be lost
 */
export function requireOwned(folder: string, shown: string): void {
  if (!lstatSync(folder).isDirectory()) throw refused(shown, 'it is not a folder', 'move it away');
  const listed = readList(folder);
  const parents = new Set(
    [...listed.keys()].flatMap((path) => {
      const parts = path.split('/');
      return parts.slice(0, -1).map((_, i) => parts.slice(0, i + 1).join('/'));
    }),
  );
  const visit = (below: string): void => {
    for (const entry of readdirSync(join(folder, below), { withFileTypes: true })) {
      const path = below === '' ? entry.name : `${below}/${entry.name}`;
      if ((path === LIST && entry.isFile()) || isLitter(entry)) continue;
      if (entry.isDirectory() && parents.has(path)) {
        visit(path);
        continue;
      }
      const hash = entry.isFile() ? listed.get(path) : undefined;
      if (hash === undefined)
        throw refused(shown, `${path} in it was not written by this program`, `move ${path} away`);
      if (sha256(readFileSync(join(folder, path))) !== hash) {
        throw refused(
          shown,
          `${path} in it was changed after it was written`,
          `move ${path} away to keep the change`,
        );
      }
    }
  };
  visit('');
}

/** Hash of each listed path; nothing is ours in a folder without the list. */
function readList(folder: string): ReadonlyMap<string, string> {
  const path = join(folder, LIST);
  if (!existsSync(path) || !lstatSync(path).isFile()) return new Map();
  const rows = readFileSync(path, 'utf8').matchAll(/^([0-9a-f]{64}) {2}(.+)$/gm);
  return new Map([...rows].map(([, hash, file]) => [file!, hash!]));
}

const refused = (shown: string, why: string, remedy: string): OutputError =>
  new OutputError(
    'folder-not-ours',
    `${shown} is not replaced, because ${why}, and this program replaces only its own unchanged files: ${remedy}, or choose another output folder`,
  );

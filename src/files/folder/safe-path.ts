import { isFileName } from '../../board/index.js';
import { OutputError } from '../../errors.js';

/**
 * Refuses a folder name or a relative path that could leave its folder, or that some file system does not take.
 *
 * @param path parts joined by `/`
 * @throws OutputError naming the path
 */
export function requireSafePath(path: string): void {
  const parts = path.split('/');
  if (parts.every(isFileName)) return;
  throw new OutputError(
    'path-unsafe',
    `the output path ${JSON.stringify(path)} cannot be written: names may hold letters, digits, blanks, dots, dashes and underscores and begin with a letter or digit, folders are parted by "/", and names of Windows devices, like con or aux, are not taken: rename it`,
  );
}

/**
 * Refuses a set of files of which one would overwrite another, on a file system that does not tell case apart either.
 *
 * @throws OutputError naming both
 */
export function requireDistinct(paths: readonly string[]): void {
  const seen = new Map<string, string>();
  for (const path of paths) {
    const key = path.toLowerCase();
    const other = seen.get(key);
    if (other !== undefined) throw clash(other, path);
    seen.set(key, path);
  }
  for (const path of paths) {
    const parts = path.toLowerCase().split('/');
    for (let i = 1; i < parts.length; i++) {
      const file = seen.get(parts.slice(0, i).join('/'));
      if (file !== undefined) throw clash(file, path);
    }
  }
}

const clash = (a: string, b: string): OutputError =>
  new OutputError(
    'path-clash',
    `the output files ${a} and ${b} would overwrite each other, every file needs its own name: rename a board`,
  );

import { readdir } from 'node:fs/promises';
import { basename, extname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Piece } from '../notation/index.js';
import { packageFolder } from './package-folder.js';
import { readText } from './read-yaml.js';

/** Folder of the pieces that come with the program. */
export const OWN_PIECES = fileURLToPath(new URL('pieces/', packageFolder()));

const EXTENSIONS = ['.yaml', '.yml'];

/** Whether a word of the line is the path of a piece's file, rather than a name. */
export const isPiecePath = (word: string): boolean => EXTENSIONS.includes(extname(word).toLowerCase());

/** Files in a folder that may hold pieces, sorted; none where there is no folder. */
export async function pieceFiles(folder: string): Promise<readonly string[]> {
  const files = await readdir(folder, { withFileTypes: true }).catch(() => []);
  return files
    .filter((file) => file.isFile() && isPiecePath(file.name))
    .map(({ name }) => name)
    .sort();
}

/** Names of the pieces in a folder, sorted: one for each file. */
export const pieceNames = async (folder: string): Promise<readonly string[]> =>
  (await pieceFiles(folder)).map((file) => basename(file, extname(file)));

/**
 * Reads one piece. Its file is data: nothing it holds is run.
 *
 * @param shown its path as the person gave it, for messages
 * @param taken option names a dimension cannot have
 * @throws InputError when it cannot be read, with all that is wrong
 */
export async function loadPiece(folder: string, shown: string, taken: readonly string[]): Promise<Piece> {
  const [text, { pieceFrom }] = await Promise.all([
    readText(resolve(folder, shown), shown),
    import('../notation/index.js'),
  ]);
  return pieceFrom(text, shown, taken);
}

/** Whether a file that cannot be read as a piece was meant to be one: it tells a design and boards. */
export async function looksLikePiece(folder: string, file: string): Promise<boolean> {
  const text = await readText(resolve(folder, file), file).catch(() => '');
  return /^design:/m.test(text) && /^boards:/m.test(text);
}

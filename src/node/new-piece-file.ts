import { writeFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { InputError, OutputError } from '../errors.js';
import { packageFolder } from './package-folder.js';

/** What editors read to complete and check a piece's file, in the package. */
const SCHEMA = 'docs/piece.schema.json';

/**
 * Writes a commented file to start a piece from.
 *
 * @param name of the piece, `garden-shelf` or `garden-shelf.yaml`
 * @returns the name of the file
 * @throws InputError for a name that cannot be, OutputError when the file is there already or cannot be written
 */
export async function newPieceFile(folder: string, name: string): Promise<string> {
  const design = name.replace(/\.ya?ml$/i, '');
  if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(design))
    throw new InputError(
      'piece-name',
      `'${name}' cannot name a piece: write small letters, digits and hyphens, like garden-shelf`,
    );
  const file = `${design}.yaml`;
  const { newPiece } = await import('../notation/index.js');
  try {
    await writeFile(join(folder, file), newPiece(design, schemaFrom(folder)), { flag: 'wx' });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new OutputError(
      'piece-not-written',
      code === 'EEXIST'
        ? `${file} is there already, and nothing is written over it: choose another name`
        : `${file} cannot be written (${code}): choose another folder`,
    );
  }
  return file;
}

/** From a folder above the program relative, so that it is found on another machine too. */
function schemaFrom(folder: string): string {
  const path = fileURLToPath(new URL(SCHEMA, packageFolder()));
  const near = relative(folder, path);
  return near.startsWith('..') ? path : `./${near.split(sep).join('/')}`;
}

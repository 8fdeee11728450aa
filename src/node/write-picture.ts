import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Design } from '../assembly/index.js';
import { OutputError } from '../errors.js';
import type { Rule } from '../length/index.js';

/**
 * Draws a design with its boards numbered, into a file beside the folders of made designs.
 *
 * @param out absolute path of the folder, made when it does not exist
 * @returns path of the file
 * @throws OutputError when it cannot be written
 */
export async function writePicture(design: Design, units: Rule, out: string): Promise<string> {
  const { numberedPicture } = await import('../files/index.js');
  const svg = await numberedPicture(design, units);
  const path = join(out, `${design.name}.explained.svg`);
  try {
    await mkdir(out, { recursive: true });
    await writeFile(path, svg);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new OutputError(
      'picture-not-written',
      `${path} cannot be written (${code}): choose another folder with --out`,
    );
  }
  return path;
}

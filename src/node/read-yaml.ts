import { readFile, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { InputError } from '../errors.js';
import { plainYaml } from '../model/index.js';

/** The most a file of parameters or of a shop may hold, bytes: hundreds of times what one needs. */
const MOST_BYTES = 1_000_000;

/**
 * A YAML file as plain values; null when it is empty.
 *
 * @param shown its path as the person gave it, from `cwd`
 * @param remedy what to write instead, for the message
 * @throws InputError `from-unreadable`, `from-not-a-file`, `from-too-large`, `from-not-yaml`
 */
export const readYaml = async (shown: string, cwd: string, remedy: string): Promise<unknown> =>
  plainYaml(await readText(resolve(cwd, shown), shown), shown, remedy);

/** The text of a regular file; a pipe could keep us waiting for ever. */
export async function readText(path: string, shown: string): Promise<string> {
  const unreadable = (error: NodeJS.ErrnoException): never => {
    throw new InputError(
      'from-unreadable',
      `${shown} cannot be read (${error.code}): give the path of a YAML file`,
    );
  };
  const is = await stat(path).catch(unreadable);
  if (!is.isFile())
    throw new InputError('from-not-a-file', `${shown} is not a regular file: give the path of a YAML file`);
  if (is.size > MOST_BYTES)
    throw new InputError(
      'from-too-large',
      `${shown} holds ${Math.ceil(is.size / 1e6)} MB; 1 MB is the limit: give the path of another YAML file`,
    );
  return await readFile(path, 'utf8').catch(unreadable);
}

import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { InputError } from '../errors.js';

/**
 * A YAML file as plain values; null when it is empty.
 *
 * @param shown its path as the person gave it, from `cwd`
 * @param remedy what to write instead, for the message
 * @throws InputError `from-unreadable`, `from-not-yaml`
 */
export async function readYaml(shown: string, cwd: string, remedy: string): Promise<unknown> {
  const text = await readFile(resolve(cwd, shown), 'utf8').catch((error: NodeJS.ErrnoException) => {
    throw new InputError(
      'from-unreadable',
      `${shown} cannot be read (${error.code}): give the path of a YAML file`,
    );
  });
  const { parseDocument } = await import('yaml');
  const document = parseDocument(text);
  const [problem] = document.errors;
  if (problem !== undefined)
    throw new InputError(
      'from-not-yaml',
      problem.code === 'MULTIPLE_DOCS'
        ? `${shown} holds more than one document: leave out the line --- and what is after it`
        : `${shown} is not YAML: ${problem.message.split('\n')[0]!.replace(/:$/, '')}; ${remedy}`,
    );
  return document.toJS() as unknown;
}

import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { InputError } from '../errors.js';
import { optionName } from '../model/index.js';

/**
 * Values from a YAML file and from options; an option wins over the file.
 *
 * @param from path of the file, from `cwd`; no file when undefined
 * @param options by kebab-case name
 * @throws InputError `from-unreadable`, `from-not-yaml`, `from-not-a-list-of-values`
 */
export async function givenValues(
  from: string | undefined,
  options: Readonly<Record<string, unknown>>,
  cwd: string,
): Promise<Readonly<Record<string, unknown>>> {
  const inFile = from === undefined ? [] : Object.entries(await readParametersFile(from, cwd));
  return Object.fromEntries([
    ...inFile.filter(([name]) => !Object.hasOwn(options, optionName(name))),
    ...Object.entries(options),
  ]);
}

async function readParametersFile(shown: string, cwd: string): Promise<object> {
  const values = await readYaml(shown, cwd, 'write a parameter a line, like seat-length: 230');
  if (values === null) return {};
  if (typeof values !== 'object' || Array.isArray(values))
    throw new InputError(
      'from-not-a-list-of-values',
      `${shown} holds no parameters: write one a line, like seat-length: 230`,
    );
  return values;
}

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

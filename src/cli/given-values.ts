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
  const inFile = from === undefined ? [] : Object.entries(await readYaml(resolve(cwd, from), from));
  return Object.fromEntries([
    ...inFile.filter(([name]) => !Object.hasOwn(options, optionName(name))),
    ...Object.entries(options),
  ]);
}

async function readYaml(path: string, shown: string): Promise<object> {
  const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
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
      `${shown} is not YAML: ${problem.message.split('\n')[0]!.replace(/:$/, '')}; write a parameter a line, like seat-length: 230`,
    );
  const values: unknown = document.toJS();
  if (values === null) return {};
  if (typeof values !== 'object' || Array.isArray(values))
    throw new InputError(
      'from-not-a-list-of-values',
      `${shown} holds no parameters: write one a line, like seat-length: 230`,
    );
  return values;
}

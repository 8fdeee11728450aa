import { InputError } from '../../errors.js';
import { optionName } from '../../model/index.js';
import { readYaml } from '../../node/index.js';

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

import { readFile, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Document, visit } from 'yaml';
import { InputError } from '../errors.js';

/** The most a file of parameters or of a shop may hold, bytes and values: hundreds of times what one needs. */
const MOST_BYTES = 1_000_000;
const MOST_VALUES = 10_000;

/**
 * A YAML file as plain values; null when it is empty.
 *
 * @param shown its path as the person gave it, from `cwd`
 * @param remedy what to write instead, for the message
 * @throws InputError `from-unreadable`, `from-not-a-file`, `from-too-large`, `from-not-yaml`
 */
export async function readYaml(shown: string, cwd: string, remedy: string): Promise<unknown> {
  const text = await readText(resolve(cwd, shown), shown);
  const { parseDocument, visit } = await import('yaml');
  const notYaml = (why: string) =>
    new InputError(
      'from-not-yaml',
      `${shown} is not YAML: ${why.split('\n')[0]!.replace(/:$/, '')}; ${remedy}`,
    );
  // the library compares every key with every other: ten thousand would take it minutes
  const document = parseDocument(text, { uniqueKeys: false });
  const [problem] = document.errors;
  if (problem?.code === 'MULTIPLE_DOCS')
    throw new InputError(
      'from-not-yaml',
      `${shown} holds more than one document: leave out the line --- and what is after it`,
    );
  if (problem !== undefined) throw notYaml(problem.message);
  const twice = keyGivenTwice(document, visit, shown);
  if (twice !== undefined) throw notYaml(`${twice} is given twice`);
  try {
    return document.toJS() as unknown;
  } catch (error) {
    // an anchor that is not there, or aliases of aliases without end
    throw notYaml((error as Error).message);
  }
}

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

/** @throws InputError when there are more values than any file needs */
function keyGivenTwice(document: Document.Parsed, look: typeof visit, shown: string): string | undefined {
  let values = 0;
  let twice: string | undefined;
  look(document, {
    Map(_, { items }) {
      values += items.length;
      const keys = items.map(({ key }) => String(key));
      if (new Set(keys).size < keys.length) twice ??= keys.find((key, at) => keys.indexOf(key) < at);
    },
    Seq(_, { items }) {
      values += items.length;
    },
  });
  if (values > MOST_VALUES)
    throw new InputError(
      'from-too-large',
      `${shown} holds ${values} values; ${MOST_VALUES} is the limit: give the path of a YAML file with one parameter a line`,
    );
  return twice;
}

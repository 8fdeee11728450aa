import type { Document, visit } from 'yaml';
import { InputError } from '../errors.js';

/** The most values a file of parameters or of a shop may hold: hundreds of times what one needs. */
const MOST_VALUES = 10_000;

/**
 * YAML as plain values; null when it is empty. The library is loaded only here.
 *
 * @param shown what the text is called in messages
 * @param remedy what to write instead, for the message
 * @throws InputError `from-too-large`, `from-not-yaml`
 */
export async function plainYaml(text: string, shown: string, remedy: string): Promise<unknown> {
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

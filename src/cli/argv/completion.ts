import { describeParameters } from '../../model/index.js';
import type { Command, Surroundings } from '../around/index.js';
import { PROGRAM } from './program.js';
import { loadSubject, subjectNames } from './subject.js';

/** What the script of a shell begins its question with. */
export const ASKS_WORDS = '--get-yargs-completions';

/** `tenonwright completion`: a script for bash or zsh that completes commands, models, options and their words. */
export async function completionScript(): Promise<string> {
  const { default: yargs } = await import('yargs');
  let script = '';
  await yargs([])
    .scriptName(PROGRAM)
    .completion('completion')
    .exitProcess(false)
    .parseAsync(['completion'], {}, (_, _argv, output) => {
      script = output;
    });
  return script;
}

/**
 * The words that may stand at the end of a line.
 *
 * @param typed what is there, without the program's name; the last word is the one that is begun, empty for none
 */
export async function wordsFor(
  typed: readonly string[],
  commands: readonly Command[],
  around: Surroundings,
): Promise<readonly string[]> {
  const begun = typed.at(-1) ?? '';
  const [name, subject] = typed;
  const command = typed.length > 1 ? commands.find((one) => one.name === name) : undefined;
  if (command === undefined)
    return beginning(begun, [...commands.map((one) => one.name), 'help', 'completion']);
  const models = command.about === 'nothing' || command.about === 'a name' ? [] : await subjectNames(around);
  if (typed.length === 2 && models.length > 0) return beginning(begun, models);
  const rows = [
    ...describeParameters(command, 'mm'),
    ...(command.about === 'model and parameters' && models.includes(subject!)
      ? describeParameters(await loadSubject(subject!, around, []), 'mm')
      : []),
  ];
  const before = rows.find(({ option }) => `--${option}` === typed.at(-2));
  if (before !== undefined && before.kind !== 'flag') return beginning(begun, before.choices);
  return beginning(
    begun,
    rows.map(({ option }) => `--${option}`).filter((option) => !typed.slice(0, -1).includes(option)),
  );
}

const beginning = (begun: string, words: readonly string[]): readonly string[] =>
  words.filter((word) => word.startsWith(begun));

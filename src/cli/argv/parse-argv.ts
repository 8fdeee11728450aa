import { InputError } from '../../errors.js';
import type { Units } from '../../length/index.js';
import { describeParameters, didYouMean, type Model, type ParameterRow } from '../../model/index.js';
import type { Command, Surroundings } from '../around/index.js';
import { ASKS_WORDS, completionScript, wordsFor } from './completion.js';
import { PROGRAM, toldText } from './program.js';
import { loadSubject } from './subject.js';
import { wordsAmong, wordsAndOptions } from './words-and-options.js';

/** What was asked for: help or the version as text, or a command. */
export type Asked =
  | { readonly text: string }
  | {
      readonly command: Command;
      readonly model?: Model;
      /** The word after the command. */
      readonly subject: string;
      /** What bare lengths are in. */
      readonly units: Units;
      /** The command's own options, as text. */
      readonly options: Readonly<Record<string, string>>;
      /** The model's parameters, as text. */
      readonly raw: Readonly<Record<string, string>>;
    };

/**
 * Reads the arguments; of all models only the named one is loaded, and its parameters become options.
 *
 * @throws InputError for an unknown command, model or option
 */
export async function parseArgv(
  argv: readonly string[],
  commands: readonly Command[],
  version: string,
  around: Surroundings,
): Promise<Asked> {
  if (argv[0] === ASKS_WORDS)
    return { text: (await wordsFor(argv.slice(2), commands, around)).map((word) => `${word}\n`).join('') };
  if (argv[0] === 'completion' && argv.length === 1) return { text: `${await completionScript()}\n` };
  if (argv[0] === 'help') return parseArgv([...argv.slice(1), '--help'], commands, version, around);
  const everyOption = commands.flatMap((command) => describeParameters(command, 'mm'));
  const [commandName, subject] = wordsAmong(argv, everyOption);
  const command = commandName === undefined ? undefined : findCommand(commandName, commands);
  const model =
    command && subject !== undefined && isAboutModel(command)
      ? await loadSubject(subject, around, [...everyOption.map(({ option }) => option), 'help', 'version'])
      : undefined;
  const parametersIn = (units: Units) =>
    command?.about === 'model and parameters' && model ? describeParameters(model, units) : [];
  const ownIn = (units: Units) => (command ? describeParameters(command, units) : []);
  const { words, options } = wordsAndOptions(argv, [...ownIn('mm'), ...parametersIn('mm')]);
  const units: Units = options.units?.toLowerCase() === 'in' ? 'in' : 'mm';
  const own = ownIn(units);
  const parameters = parametersIn(units);
  refuseClashes(model, own, parameters);
  const told = (['help', 'version'] as const).find((one) => options[one] === 'true');
  if (told === undefined) refuseWords(command, model, subject, words.slice(2));
  if (told !== undefined || command === undefined) {
    const text = await toldText([...words, `--${told}`], { commands, version, parameters, own, around });
    return { text: `${text}\n` };
  }
  return {
    command,
    units,
    ...(model && { model }),
    subject: subject ?? '',
    options: picked(options, own),
    raw: picked(options, parameters),
  };
}

const isAboutModel = ({ about }: Command): boolean => about === 'model' || about === 'model and parameters';

function findCommand(name: string, commands: readonly Command[]): Command {
  const found = commands.find((command) => command.name === name);
  if (found) return found;
  const names = commands.map((command) => command.name);
  throw new InputError('command-unknown', `there is no command '${name}'${didYouMean(name, names)}`);
}

function refuseClashes(
  model: Model | undefined,
  own: readonly ParameterRow[],
  parameters: readonly ParameterRow[],
): void {
  for (const { option } of parameters)
    if (['help', 'version'].includes(option) || own.some((row) => row.option === option))
      throw new Error(`model ${model!.name} has a parameter named like the option --${option}: rename it`);
}

function refuseWords(
  command: Command | undefined,
  model: Model | undefined,
  subject: string | undefined,
  more: readonly string[],
): void {
  if (command === undefined)
    throw new InputError('command-missing', `no command is given: ${PROGRAM} --help lists them`);
  if (isAboutModel(command) && model === undefined)
    throw new InputError(
      'model-missing',
      `${command.name} needs a model or the file of a piece right after it: ${PROGRAM} list shows which there are`,
    );
  if (command.about === 'a name' && subject === undefined)
    throw new InputError('name-missing', `${command.name} needs a name right after it, like garden-stool`);
  const [beyond] = command.about === 'nothing' && subject !== undefined ? [subject] : more;
  if (beyond !== undefined)
    throw new InputError(
      'word-unexpected',
      `'${beyond}' belongs to no option of ${command.name}: put a value with spaces in quotes, like '9 1/16 in'`,
    );
}

const picked = (
  given: Readonly<Record<string, string>>,
  rows: readonly ParameterRow[],
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    rows.flatMap(({ option }) => (given[option] === undefined ? [] : [[option, given[option]]])),
  );

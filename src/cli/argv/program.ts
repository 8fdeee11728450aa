import type { Argv } from 'yargs';
import type { ParameterRow } from '../../model/index.js';
import type { Command } from '../around/index.js';
import { columnsOf, type Surroundings } from '../around/index.js';

export const PROGRAM = 'tenonwright';

/** What must be known to print help. */
export interface ProgramText {
  readonly commands: readonly Command[];
  readonly version: string;
  readonly parameters: readonly ParameterRow[];
  readonly own: readonly ParameterRow[];
  readonly around: Surroundings;
}

/**
 * Help or the version as text; nothing is printed and the process goes on. The library that lays help out is loaded only here.
 *
 * @param asking the words of the line, and --help or --version
 */
export async function toldText(asking: readonly string[], of: ProgramText): Promise<string> {
  const { default: yargs } = await import('yargs');
  const parser = program(yargs([]), of);
  for (const row of of.parameters) parser.option(row.option, { ...optionOf(row), group: 'Parameters:' });
  for (const row of of.own) parser.option(row.option, optionOf(row));
  let text = '';
  let failure: Error | undefined | null;
  await parser.parseAsync([...asking], {}, (error, _argv, output) => {
    failure = error;
    text = output;
  });
  if (failure) throw failure;
  return text;
}

const program = (empty: Argv, { commands, version, around }: ProgramText) =>
  commands
    .reduce(
      (parser, { name, summary, about }) =>
        parser.command(
          about === 'nothing' ? name : `${name} <${about === 'a name' ? 'piece' : 'model'}>`,
          summary,
          () => {},
          () => {},
        ),
      empty.scriptName(PROGRAM).locale('en'),
    )
    .usage('$0 <command> [options]')
    .epilogue(
      `${PROGRAM} make <model> --help lists the model's parameters; a model is a name ${PROGRAM} list shows, or a file of your own that ends in .yaml. Lengths: 230, 23cm, 9in, '9-1/16"'; angles: 10, 10deg. ${PROGRAM} completion prints a script that completes words in bash and zsh.`,
    )
    .version(version)
    .help()
    .wrap(columnsOf(around))
    .exitProcess(false);

const optionOf = (row: ParameterRow) => ({
  describe: row.kind === 'flag' || row.kind === 'text' ? row.help : `${row.help} (${row.range})`,
  defaultDescription: row.default,
});

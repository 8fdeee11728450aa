import { TenonwrightError } from '../errors.js';
import { speaker, type Units } from '../length/index.js';
import { readParameters } from '../model/index.js';
import { version } from '../node/index.js';
import { parseArgv } from './argv/index.js';
import type { Surroundings } from './around/index.js';
import { BAD_INPUT, type Command, DONE, FAULT } from './around/index.js';
import { check, describe, explain, list, make, newCommand, open, shopCommand } from './commands/index.js';
import { range } from './ranges/index.js';

const COMMANDS: readonly Command[] = [
  list,
  describe,
  make,
  open,
  check,
  range,
  newCommand,
  explain,
  shopCommand,
] as readonly Command[];

/**
 * Runs one command line.
 *
 * @param argv without the program's name
 * @returns exit status: 0 done; 2 bad input; 3 the design has error findings; 1 a fault of the program
 */
export async function run(argv: readonly string[], around: Surroundings): Promise<number> {
  let units: Units = 'mm';
  try {
    const current = await version();
    const asked = await parseArgv(argv, COMMANDS, current, around);
    if ('text' in asked) {
      around.out.write(asked.text);
      return DONE;
    }
    const { command, model, subject, options, raw } = asked;
    units = asked.units;
    const values = readParameters(command, options, units);
    return await command.act(values, {
      around,
      argv,
      version: current,
      raw,
      subject,
      get model() {
        if (model === undefined) throw new Error(`${command.name} is about no model`);
        return model;
      },
    });
  } catch (error) {
    return report(error, units, around);
  }
}

function report(error: unknown, units: Units, { err }: Surroundings): number {
  if (error instanceof TenonwrightError) {
    err.write(`${error.explain(speaker(units)).replace(/^/gm, 'tenonwright: ')}\n`);
    return BAD_INPUT;
  }
  const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
  err.write(
    `tenonwright: this is a fault in the program, not in your input; please report it with these lines:\n${trace}\n`,
  );
  return FAULT;
}

import { appendFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { InputError, OutputError } from '../errors.js';

/** The text of a file a run left. @throws InputError when it cannot be read */
export function keptLines(path: string, shown: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new InputError(
      'kept-unreadable',
      `${shown} cannot be read (the system says ${(error as NodeJS.ErrnoException).code}): name a file that the command range left`,
    );
  }
}

/**
 * A file to which lines are added as they come: a run that is killed loses at most the line it was about to add.
 *
 * @returns what is in it already, and a way to add
 * @throws OutputError when it cannot be written
 */
export function keepLines(path: string): { readonly before: string; readonly add: (line: string) => void } {
  const asOutput = <T>(act: () => T): T => {
    try {
      return act();
    } catch (error) {
      throw new OutputError(
        'out-unwritable',
        `${path} cannot be written (the system says ${(error as NodeJS.ErrnoException).code}): choose another folder with --out`,
      );
    }
  };
  return asOutput(() => {
    mkdirSync(dirname(path), { recursive: true });
    const before = existsSync(path) ? readFileSync(path, 'utf8') : '';
    // a line cut short by a kill is ended, so that the next one stands by itself
    appendFileSync(path, before === '' || before.endsWith('\n') ? '' : '\n');
    return { before, add: (line) => asOutput(() => appendFileSync(path, line)) };
  });
}

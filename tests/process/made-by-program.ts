import path from 'node:path';
import { onceARun } from '../once-a-run.js';
import { type Ended, run } from './program.js';

/** How a run of the built program ended, and the folder of the design it made. */
export interface MadeByProgram {
  readonly ended: Ended;
  readonly folder: string;
}

/** Every kind of file of a model, made by the built program: once for all test files of a run. */
export async function madeByProgram(model: string): Promise<MadeByProgram> {
  const { folder, made } = await onceARun(`the program makes ${model}`, (out) =>
    run('make', model, '--quiet', '--out', out),
  );
  return { ended: made, folder: path.join(folder, model) };
}

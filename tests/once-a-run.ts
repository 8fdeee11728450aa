import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { deserialize, serialize } from 'node:v8';
import { inject } from 'vitest';

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder of what is made once for all test files of a run; `tests/build.ts` makes and deletes it. */
    onceARun: string;
  }
}

/** What was made, and the folder its files stand in. */
export interface OnceMade<T> {
  readonly folder: string;
  readonly made: T;
}

/**
 * Makes something once for all test files of a run, whichever worker asks first; the others wait for it and read it.
 *
 * @param name says all it depends on
 * @param work writes files into an empty folder and tells of them in plain data
 */
export async function onceARun<T>(name: string, work: (folder: string) => Promise<T>): Promise<OnceMade<T>> {
  const folder = path.join(inject('onceARun'), createHash('sha256').update(name).digest('hex').slice(0, 16));
  const told = `${folder}.told`;
  while (!existsSync(told)) {
    if (!begun(folder)) {
      await setTimeout(30);
      continue;
    }
    try {
      writeFileSync(`${folder}.new`, serialize(await work(folder)));
      renameSync(`${folder}.new`, told);
    } catch (error) {
      // who waits tries again, and fails by itself
      rmSync(folder, { recursive: true, force: true });
      throw error;
    }
  }
  return { folder, made: deserialize(readFileSync(told)) as T };
}

/** Whether the folder is ours to fill: only one worker can make it. */
function begun(folder: string): boolean {
  try {
    mkdirSync(folder);
    return true;
  } catch {
    if (existsSync(folder) || existsSync(path.dirname(folder))) return false;
    throw new Error(`${path.dirname(folder)} is gone: something deleted it before the tests had ended`);
  }
}

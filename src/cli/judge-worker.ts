import { parentPort, workerData } from 'node:worker_threads';
import { readParameters } from '../model/index.js';
import type { Ask, Said } from '../node/index.js';
import { type At, judgeOf } from '../range/index.js';
import { askedQuestion } from './asked-question.js';
import { parseArgv } from './parse-argv.js';
import { range } from './range.js';
import type { Surroundings } from './surroundings.js';

/** What a worker starts from: the line it works for. */
export interface JudgeStart {
  readonly argv: readonly string[];
  readonly cwd: string;
  readonly modelsFolder?: string;
}

const { argv, ...of } = workerData as JudgeStart;
const silent = { write: () => {} };
const around: Surroundings = { out: silent, err: silent, isTerminal: false, ...of };

/** The question of a line that the program has read already. */
async function judgeFor(): Promise<ReturnType<typeof judgeOf>> {
  const asked = await parseArgv(argv, [range], '', around);
  if ('text' in asked || !asked.model) throw new Error('a worker was given no line of the command range');
  const options = readParameters(range, asked.options, asked.units);
  const { question, values } = await askedQuestion(options, { around, model: asked.model, raw: asked.raw });
  return judgeOf(question, values);
}

const judge = judgeFor();
parentPort!.on('message', async ({ id, about }: Ask) => {
  const answer = await (await judge)(about as At);
  parentPort!.postMessage({ id, answer } satisfies Said);
});

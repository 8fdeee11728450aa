import { parentPort, workerData } from 'node:worker_threads';
import { readParameters } from '../../model/index.js';
import type { Ask, Said } from '../../node/index.js';
import { type At, curingJudgeOf, judgeOf } from '../../range/index.js';
import { parseArgv } from '../argv/index.js';
import type { Surroundings } from '../around/index.js';
import { askedQuestion } from '../given/index.js';
import { range } from './range.js';

/** What a worker starts from: the line it works for. */
export interface JudgeStart {
  readonly argv: readonly string[];
  readonly cwd: string;
  readonly modelsFolder?: string;
}

/** What it is asked: a verdict, and beyond an end what else would have to change. */
export interface Asking {
  readonly at: At;
  readonly cures?: boolean;
}

const { argv, ...of } = workerData as JudgeStart;
const silent = { write: () => {} };
const around: Surroundings = { out: silent, err: silent, isTerminal: false, ...of };

/** The question of a line that the program has read already. */
async function judgesFor() {
  const asked = await parseArgv(argv, [range], '', around);
  if ('text' in asked || !asked.model) throw new Error('a worker was given no line of the command range');
  const options = readParameters(range, asked.options, asked.units);
  const { question, values } = await askedQuestion(options, { around, model: asked.model, raw: asked.raw });
  return { plain: judgeOf(question, values), curing: curingJudgeOf(question, values) };
}

const judges = judgesFor();
parentPort!.on('message', async ({ id, about }: Ask) => {
  const { at, cures } = about as Asking;
  const { plain, curing } = await judges;
  const answer = await (cures ? curing : plain)(at);
  parentPort!.postMessage({ id, answer } satisfies Said);
});

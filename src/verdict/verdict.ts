import type { Design } from '../assembly/index.js';
import { benchInShop, benchOf, CHECKS, type Finding, worstFirst } from '../checks/index.js';
import { TenonwrightError } from '../errors.js';
import { speaker, type Units } from '../length/index.js';
import type { Model } from '../model/index.js';
import { designFor, type Shop } from '../shop/index.js';
import { gate, type Kernel, solidsOf, startKernel } from '../solid/index.js';

/** What a verdict is asked about, besides the values. */
export interface Question {
  readonly model: Model;
  readonly shop: Shop;
  readonly jig: Design;
  readonly units: Units;
  /** Outside diameter of the guide bush, mm. */
  readonly bush?: number;
}

/** Values by their camelCase names; mm and degrees. */
export type Values = Readonly<Record<string, unknown>>;

/** What came of building and checking a design. */
export interface Verdict {
  readonly findings: readonly Finding[];
  /** Why nothing could be built; there are no findings then. */
  readonly refused: TenonwrightError | undefined;
}

/** Builds a design's solids, runs every check on them and frees them again. */
export async function verdictOf(question: Question, values: Values): Promise<Verdict> {
  const kernel = await startKernel();
  try {
    const steps = verdictSteps(kernel, question, values);
    for (;;) {
      const step = steps.next();
      if (step.done) return step.value;
    }
  } finally {
    kernel.dispose();
  }
}

/**
 * Verdicts for values that keep changing: asking anew stops the one that is being worked out, between two of its steps, and
 * frees what it made.
 *
 * @param breath lets whatever waits have its turn: it is awaited before each step
 * @returns asks; the answer is undefined when another question came before it was there
 */
export function latestVerdict(
  question: Question,
  breath: () => Promise<void>,
): (values: Values) => Promise<Verdict | undefined> {
  let latest = 0;
  return async (values) => {
    latest += 1;
    const mine = latest;
    const kernel = await startKernel();
    try {
      const steps = verdictSteps(kernel, question, values);
      for (;;) {
        await breath();
        if (mine !== latest) return undefined;
        const step = steps.next();
        if (step.done) return step.value;
      }
    } finally {
      kernel.dispose();
    }
  };
}

/** The work of a verdict, a step at a time: design, solids, measures, holding and glue-up, and each check. */
function* verdictSteps(kernel: Kernel, question: Question, values: Values): Generator<undefined, Verdict> {
  try {
    const { model, shop, jig, bush } = question;
    const design = designFor(model, values, shop);
    yield;
    const solids = solidsOf(kernel, design);
    gate(solids);
    yield;
    const measured = benchOf(solids, speaker(shop.units), bush);
    yield;
    const bench = benchInShop(measured, shop, jig);
    const found: Finding[] = [];
    for (const { check } of CHECKS) {
      yield;
      found.push(...check(bench));
    }
    return { findings: worstFirst(found), refused: undefined };
  } catch (error) {
    if (!(error instanceof TenonwrightError)) throw error;
    return { findings: [], refused: error };
  }
}

import type { Design } from '../assembly/index.js';
import { benchInShop, benchOf, type Finding, runChecks } from '../checks/index.js';
import { TenonwrightError } from '../errors.js';
import { speaker, type Units } from '../length/index.js';
import type { Model } from '../model/index.js';
import { type Shop, toolsOf } from '../shop/index.js';
import { gate, solidsOf, startKernel } from '../solid/index.js';

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
    const { model, shop, jig, units, bush } = question;
    const solids = solidsOf(kernel, model.build(values, toolsOf(shop)));
    gate(solids);
    const bench = benchInShop(benchOf(solids, speaker(units), bush), shop, jig);
    return { findings: runChecks(bench), refused: undefined };
  } catch (error) {
    if (!(error instanceof TenonwrightError)) throw error;
    return { findings: [], refused: error };
  } finally {
    kernel.dispose();
  }
}

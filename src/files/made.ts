import { type Bench, benchInShop, benchOf, type Finding, failed, runChecks } from '../checks/index.js';
import { type Say, speaker } from '../length/index.js';
import { type ParameterValue, parameterValues } from '../model/index.js';
import { revisionOf, type ShopPapers, shopPapers } from '../shop/index.js';
import { gate, type Solids, solidsOf, startKernel } from '../solid/index.js';
import type { DesignRequest } from './request.js';

/** A design with everything worked out, from which files are only written. */
export interface Made {
  readonly request: DesignRequest;
  readonly say: Say;
  readonly parameters: Readonly<Record<string, ParameterValue>>;
  readonly solids: Solids;
  readonly bench: Bench;
  readonly findings: readonly Finding[];
  /** A check found an error: cutting files are held back, or carry a warning when they are asked for all the same. */
  readonly failed: boolean;
  readonly papers: ShopPapers;
}

/** Steps told to the person, in their order. */
export const STEPS = [
  'reading the sizes',
  'making the solids',
  'measuring and checking',
  'writing the files',
] as const;

/** Builds and checks a design, hands it on, and frees its solids whatever happens. */
export async function withMade<T>(request: DesignRequest, use: (made: Made) => Promise<T>): Promise<T> {
  const { progress } = request;
  progress(STEPS[0], 0, STEPS.length);
  // the kernel loads while the design is laid out
  const starting = startKernel();
  const design = request.model.build(request.values);
  const kernel = await starting;
  try {
    progress(STEPS[1], 1, STEPS.length);
    const solids = solidsOf(kernel, design);
    gate(solids);
    progress(STEPS[2], 2, STEPS.length);
    const say = speaker(request.units);
    const bench = benchInShop(benchOf(solids, say, request.bush), request.shop, request.jig);
    const findings = runChecks(bench, (name) => progress(`${STEPS[2]}: ${name}`, 2, STEPS.length));
    const parameters = parameterValues(request.model, request.values);
    const papers = shopPapers({
      ...bench.held,
      solids,
      say,
      glueUp: bench.glueUp.glueUp,
      revision: revisionOf(parameters, request.version),
    });
    return await use({ request, say, parameters, solids, bench, findings, failed: failed(findings), papers });
  } finally {
    kernel.dispose();
  }
}

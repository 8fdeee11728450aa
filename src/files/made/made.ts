import {
  type BenchInShop,
  benchInShop,
  benchOf,
  type Finding,
  failed,
  runChecks,
} from '../../checks/index.js';
import { type Say, speaker } from '../../length/index.js';
import { type ParameterValue, parameterValues } from '../../model/index.js';
import { type Aid, clampPlan, revisionOf, type ShopPapers, shopPapers } from '../../shop/index.js';
import { gate, type Solids, solidsOf, startKernel } from '../../solid/index.js';
import { once } from './once.js';
import type { DesignRequest } from './request.js';

/** A design with everything worked out, from which files are only written. */
export interface Made {
  readonly request: DesignRequest;
  readonly say: Say;
  readonly parameters: Readonly<Record<string, ParameterValue>>;
  readonly solids: Solids;
  readonly bench: BenchInShop;
  readonly findings: readonly Finding[];
  /** A check found an error: cutting files are held back, or carry a warning when they are asked for all the same. */
  readonly failed: boolean;
  /** Of parameters, program and shop: on every paper. */
  readonly revision: string;
  /** Pieces made to hold, guide and clamp the work. */
  readonly aids: readonly Aid[];
  /** Every paper of the bench, worked out when it is first read: most kinds of file do without. */
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
    const revision = revisionOf(parameters, request.version, request.shop);
    const { glueUp } = bench.glueUp;
    const clamps = once(() => clampPlan(design, glueUp, request.shop.clamps));
    const aids = once(() => [...bench.held.aids, ...clamps().pads]);
    const papers = once(() =>
      shopPapers({ ...bench.held, solids, say, glueUp, clamps: clamps(), aids: aids(), revision }),
    );
    return await use({
      request,
      say,
      parameters,
      solids,
      bench,
      findings,
      failed: failed(findings),
      revision,
      get aids() {
        return aids();
      },
      get papers() {
        return papers();
      },
    });
  } finally {
    kernel.dispose();
  }
}

import {
  type BenchInShop,
  benchInShop,
  benchOf,
  type Finding,
  failed,
  runChecks,
} from '../../checks/index.js';
import { settledFigures } from '../../frame/index.js';
import { type Say, speaker } from '../../length/index.js';
import { type ParameterValue, parameterValues } from '../../model/index.js';
import { once } from '../../once.js';
import { type Aid, designFor, revisionOf, type ShopPapers, shopPapers, toolsOf } from '../../shop/index.js';
import { gate, type Solids, solidsOf, startKernel } from '../../solid/index.js';
import { cureKey, curesOf, worthCuring } from '../../verdict/index.js';
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

const LOOKING_FOR_CURES = 'looking for a dimension that ends each error or worry';

/** A design on its way, whose solids are in the kernel's memory until it is disposed of. */
export interface Started extends Made {
  /** Puts into the errors which dimension ends them, when one does. */
  readonly findCures: () => Promise<void>;
  /** Frees the solids; nothing may be read afterwards that was not read before. */
  readonly dispose: () => void;
}

/**
 * Makes a design's solids. What follows from them (checks, aids, papers) is worked out when it is first read, so that a
 * caller can show one stage before it asks for the next.
 *
 * @param kernelWasm the kernel's WebAssembly, where it cannot find it by itself
 * @throws TenonwrightError for input that cannot be used
 */
export async function startDesign(request: DesignRequest, kernelWasm?: ArrayBuffer): Promise<Started> {
  const { progress, shop } = request;
  progress(STEPS[0], 0, STEPS.length);
  // the kernel loads while the design is laid out
  const starting = startKernel(kernelWasm);
  starting.catch(() => {});
  const design = designFor(request.model, request.values, shop);
  const kernel = await starting;
  try {
    progress(STEPS[1], 1, STEPS.length);
    const solids = solidsOf(kernel, design);
    gate(solids);
    const say = speaker(request.shop.units);
    const parameters = parameterValues(request.model, request.model.complete(request.values, toolsOf(shop)));
    const revision = revisionOf(parameters, request.version, shop, request.model.told);
    const bench = once(() => benchInShop(benchOf(solids, say, request.bush), shop, request.jig));
    const findings = once(() =>
      runChecks(bench(), (name) => progress(`${STEPS[2]}: ${name}`, 2, STEPS.length)),
    );
    let cured: readonly Finding[] | undefined;
    const findCures = async (): Promise<void> => {
      // nothing can be said to have been tried where nothing can be changed
      if (Object.keys(request.model.parameters.shape).length === 0) return;
      const found = await curesOf(request, request.values, findings(), request.given);
      cured = findings().map((finding) => {
        if (!worthCuring(finding)) return finding;
        return { ...finding, cure: found.get(cureKey(finding))?.typed ?? '' };
      });
    };
    const aids = once(() => settledFigures([...bench().held.aids, ...bench().clamps.pads]));
    const papers = once(() => {
      const { held, glueUp, clamps } = bench();
      return shopPapers({
        ...held,
        solids,
        say,
        glueUp: glueUp.glueUp,
        clamps,
        aids: aids(),
        revision,
        ...(request.bush !== undefined && { bush: request.bush }),
      });
    });
    return {
      request,
      say,
      parameters,
      solids,
      revision,
      get bench() {
        return bench();
      },
      get findings() {
        return cured ?? findings();
      },
      findCures,
      get failed() {
        return failed(findings());
      },
      get aids() {
        return aids();
      },
      get papers() {
        return papers();
      },
      dispose: kernel.dispose,
    };
  } catch (error) {
    kernel.dispose();
    throw error;
  }
}

/** Builds and checks a design, hands it on, and frees its solids whatever happens. */
export async function withMade<T>(request: DesignRequest, use: (made: Made) => Promise<T>): Promise<T> {
  const made = await startDesign(request);
  try {
    request.progress(STEPS[2], 2, STEPS.length);
    // what is wrong is known before anything is written
    if (request.cures && made.findings.some(worthCuring)) {
      request.progress(LOOKING_FOR_CURES, 2, STEPS.length);
      await made.findCures();
    }
    return await use(made);
  } finally {
    made.dispose();
  }
}

import path from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import frame from '../../models/frame.js';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import { type DesignResult, fileKinds } from '../../src/files/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { makeDesign } from '../../src/node/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { onceARun } from '../once-a-run.js';
import { MANY } from '../properties/seed.js';

/** A design whose files are read by others. */
export interface Case {
  readonly called: string;
  readonly model: Model;
  readonly values: Readonly<Record<string, unknown>>;
}

/** In degrees. Each number of treads and each rake for somebody who has just cloned; each with each with `TENONWRIGHT_MANY=1`. */
const RAKES: Readonly<Record<1 | 2, readonly number[]>> = MANY
  ? { 1: [0, 10, 20], 2: [0, 10, 20] }
  : { 1: [0, 10], 2: [10, 20] };

/** Every model; the stool with one tread and two, upright, raked and raked as far as it goes. */
export const CASES: readonly Case[] = [
  { called: 'jig', model: jig as unknown as Model, values: {} },
  { called: 'frame', model: frame as unknown as Model, values: {} },
  ...([1, 2] as const).flatMap((treads) =>
    RAKES[treads].map((rake) => ({
      called: `stool of ${treads === 1 ? 'one tread' : 'two treads'} at a rake of ${rake}°`,
      model: stool as unknown as Model,
      values: { treads: String(treads), rake: String(rake) },
    })),
  ),
];

/**
 * Those whose files of every kind other programs read: for somebody who has just cloned without the less raked stool of two
 * treads, which has nothing that the others lack.
 */
export const READ_BACK: readonly Case[] = CASES.filter(
  ({ values }) => MANY || values.treads !== '2' || values.rake !== '10',
);

/** The walls beside a 14 mm mortise in 15 mm of wood are too thin: a design with errors has its page all the same. */
export const FAILED: Case = {
  called: 'stool whose stretcher is too thin',
  model: stool as unknown as Model,
  values: { cutter: '14', stretcherThickness: '15' },
};

/** What was made, and the folder it stands in. */
export interface Made extends DesignResult {
  readonly folder: string;
}

export interface HowMade {
  readonly units?: 'mm' | 'in';
  readonly curves?: 'arcs' | 'segments';
  readonly only?: readonly string[];
  readonly format?: 'binary' | 'ascii';
  readonly livingPictures?: boolean;
}

/** Every usual kind of file but the two that take long: made together, once for all test files. */
export const QUICK_KINDS: readonly string[] = [...fileKinds(undefined)].filter(
  (kind) => kind !== 'plan' && kind !== 'pictures',
);

/** How designs are made when nothing is said. */
const PLAIN = { units: 'mm', curves: 'arcs', format: 'binary' } as const;

/** Makes designs, each way of making once for all test files of a run. Other kinds may stand beside those asked for. */
export function workshop(): (of: Case, how?: HowMade) => Promise<Made> {
  const known = new Map<string, Promise<Made>>();
  return (of, how = {}) => {
    const { only, ...rest } = { ...PLAIN, ...how };
    const quick = only?.every((kind) => QUICK_KINDS.includes(kind)) && isDeepStrictEqual(rest, PLAIN);
    const way: HowMade = { ...rest, ...(only && { only: quick ? QUICK_KINDS : only }) };
    const key = JSON.stringify([of.model.name, of.values, way]);
    const made = known.get(key) ?? make(of, way, key);
    known.set(key, made);
    return made;
  };
}

async function make({ model, values }: Case, how: HowMade, key: string): Promise<Made> {
  const { folder, made } = await onceARun(key, (out) =>
    makeDesign({
      model,
      shop: builtInShop('mm'),
      jig: jig.build(readParameters(jig, {}, 'mm')),
      values: readParameters(model, values, 'mm'),
      ...PLAIN,
      ...how,
      out,
      // a check that fails is shown by other tests; here the files are looked at all the same
      force: true,
      version: '0.0.0',
      progress: () => {},
    }),
  );
  return { ...made, folder: path.join(folder, made.design.name) };
}

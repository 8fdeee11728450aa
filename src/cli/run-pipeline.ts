import { resolve } from 'node:path';
import { InputError } from '../errors.js';
import type { Units } from '../length/index.js';
import { type Model, optionName, readParameters } from '../model/index.js';
import { checkDesign, makeDesign } from '../node/index.js';
import type { Call } from './command.js';
import { atHand } from './given-shop.js';
import { givenValues } from './given-values.js';
import type { MakeResult, Pipeline } from './pipeline.js';
import { NO_PROGRESS, progressLine } from './progress-line.js';

/** Options of `make` and `check` that reach the pipeline. */
export interface PipelineOptions {
  readonly from?: string | undefined;
  readonly shop?: string | undefined;
  readonly units: Units;
  readonly bush?: number | undefined;
  readonly json: boolean;
  readonly quiet: boolean;
  readonly out?: string;
  readonly only?: string | undefined;
  readonly format?: 'binary' | 'ascii';
  readonly curves?: 'arcs' | 'segments';
  readonly projection?: 'first-angle' | 'third-angle';
  readonly drawingUnits?: 'mm' | 'in' | 'dual' | undefined;
  readonly printScale?: string | undefined;
  readonly force?: boolean;
}

/**
 * Reads the values and hands them to the pipeline, which is loaded only now.
 *
 * @throws InputError for values that cannot be used
 */
export async function runPipeline(
  which: keyof Pipeline,
  options: PipelineOptions,
  { around, model, raw, version }: Call,
): Promise<MakeResult> {
  const given = await givenValues(options.from, raw, around.cwd);
  // what was mistyped is told before a shop file is read
  readParameters(model, given, options.units);
  const { shop, jig, given: all } = await atHand(options.shop, options.units, around, { model, given });
  const values = readParameters(model, all, options.units);
  const only = options.only === undefined ? undefined : readKinds(options.only);
  const pipeline: Pipeline = around.pipeline ?? { checkDesign, makeDesign };
  const line = options.json || options.quiet ? NO_PROGRESS : progressLine(around);
  try {
    return await pipeline[which]({
      model,
      values,
      shop,
      jig,
      units: options.units,
      out: resolve(around.cwd, options.out ?? 'out'),
      ...(only && { only }),
      format: options.format ?? 'binary',
      curves: options.curves ?? 'arcs',
      ...(options.bush !== undefined && { bush: options.bush }),
      ...(options.projection && { projection: options.projection }),
      ...(options.drawingUnits && { drawingUnits: options.drawingUnits }),
      ...(options.printScale !== undefined && { printScale: options.printScale }),
      force: options.force ?? false,
      given: givenNames(model, given),
      cures: true,
      version,
      progress: line.step,
    });
  } finally {
    line.end();
  }
}

/** Parameters by their names, however they were spelled. */
const givenNames = (model: Model, given: object): readonly string[] => {
  const options = Object.keys(given).map(optionName);
  return Object.keys(model.parameters.shape).filter((name) => options.includes(optionName(name)));
};

function readKinds(words: string): readonly string[] {
  const kinds = words.split(',').map((word) => word.trim().toLowerCase());
  if (kinds.includes(''))
    throw new InputError(
      'only-empty',
      `--only is '${words}', and a kind of file is missing: separate kinds with single commas, like stl,dxf`,
    );
  return [...new Set(kinds)];
}

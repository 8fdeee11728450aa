import { resolve } from 'node:path';
import { InputError } from '../../errors.js';
import { withFraction } from '../../length/index.js';
import { checkDesign, makeDesign } from '../../node/index.js';
import type { Ranges } from '../../range/index.js';
import type { Call, MakeResult, Pipeline } from '../around/index.js';
import { NO_PROGRESS, progressLine } from '../around/index.js';
import { type Asked, type AskedOptions, askedQuestion } from '../given/index.js';

/** Options of `make` and `check` that reach the pipeline. */
export interface PipelineOptions extends AskedOptions {
  readonly json: boolean;
  readonly quiet: boolean;
  readonly out?: string;
  readonly only?: string | undefined;
  readonly format?: 'binary' | 'ascii';
  readonly curves?: 'arcs' | 'segments';
  readonly projection?: 'first-angle' | 'third-angle';
  readonly drawingUnits?: 'mm' | 'in' | 'dual' | undefined;
  readonly printScale?: string | undefined;
  readonly livingPictures?: boolean;
  readonly appendix?: 'end' | 'separate' | 'none';
  readonly ranges?: string | undefined;
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
  const { question, values, given } = await askedQuestion(options, { around, model, raw });
  const ranges = await rangesFor(which, options.ranges, { question, values, given }, around.cwd, version);
  const only = options.only === undefined ? undefined : readKinds(options.only);
  if (options.livingPictures && !only?.includes('living'))
    throw new InputError(
      'no-living-plan',
      '--living-pictures is about the living plan, which is not among the kinds of file to write: give --only living too',
    );
  const pipeline: Pipeline = around.pipeline ?? { checkDesign, makeDesign };
  const line = options.json || options.quiet ? NO_PROGRESS : progressLine(around);
  try {
    return await pipeline[which]({
      ...question,
      values,
      out: resolve(around.cwd, options.out ?? 'out'),
      ...(only && { only }),
      ...(ranges && { ranges }),
      format: options.format ?? 'binary',
      curves: options.curves ?? 'arcs',
      ...(options.projection && { projection: options.projection }),
      ...(options.drawingUnits && {
        drawingUnits: withFraction(options.drawingUnits, question.shop.fraction),
      }),
      ...(options.appendix && { appendix: options.appendix }),
      ...(options.livingPictures && { livingPictures: true }),
      ...(options.printScale !== undefined && { printScale: options.printScale }),
      force: options.force ?? false,
      given,
      cures: true,
      version,
      progress: line.step,
    });
  } finally {
    line.end();
  }
}

/** Those the person names; else, where nothing is other than as it comes, those the design is shipped with. */
async function rangesFor(
  which: keyof Pipeline,
  named: string | undefined,
  asked: Asked,
  cwd: string,
  version: string,
): Promise<Ranges | undefined> {
  if (named === undefined && (which !== 'makeDesign' || asked.given.length > 0)) return undefined;
  const { givenRanges, shippedRanges } = await import('../given/given-ranges.js');
  return named === undefined ? shippedRanges(asked, version) : givenRanges(named, cwd, asked, version);
}

function readKinds(words: string): readonly string[] {
  const kinds = words.split(',').map((word) => word.trim().toLowerCase());
  if (kinds.includes(''))
    throw new InputError(
      'only-empty',
      `--only is '${words}', and a kind of file is missing: separate kinds with single commas, like stl,dxf`,
    );
  return [...new Set(kinds)];
}

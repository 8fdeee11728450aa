import { readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import process from 'node:process';
import { InputError } from '../../errors.js';
import { rangeFiles } from '../../files/index.js';
import { type Say, speaker } from '../../length/index.js';
import { didYouMean, optionName } from '../../model/index.js';
import {
  keepLines,
  keptLines,
  packageFolder,
  requireOutFolder,
  startJudges,
  writeFolder,
} from '../../node/index.js';
import {
  type Answer,
  aboutOf,
  type Dimension,
  dimensionOf,
  glanceOf,
  isUsed,
  KeptAnswers,
  type Ranges,
  rangesOf,
  type Share,
  valueWords,
  type Wanted,
  workShare,
} from '../../range/index.js';
import { toolsOf } from '../../shop/index.js';
import { knobs } from '../../verdict/index.js';
import {
  type Call,
  columnsOf,
  DONE,
  FAILED_CHECKS,
  NO_PROGRESS,
  progressLine,
  type Surroundings,
  table,
  wrap,
} from '../around/index.js';
import { type Asked, askedQuestion } from '../given/index.js';
import type { Asking, JudgeStart } from './judge-worker.js';
import type { RangeOptions } from './range.js';

/**
 * Finds the ranges of a design, or one share of the verdicts they stand on.
 *
 * Every verdict is kept in a file beside the folder as soon as it is there, by what it is about: a run that was stopped goes on
 * from it.
 *
 * @throws InputError for options that cannot be used
 */
export async function findRanges(options: RangeOptions, call: Call): Promise<number> {
  const { around, version } = call;
  const asked = await askedQuestion(options, call);
  const { question, values } = asked;
  const share = options.share === undefined ? undefined : shareIn(options.share);
  const wanted = wantedIn(options, asked);
  const name = `${question.model.name}-range`;
  const out = resolve(around.cwd, options.out);
  if (!share) await requireOutFolder(out, name);
  const kept = new KeptAnswers();
  for (const shown of options.join?.split(',') ?? [])
    kept.add(keptLines(resolve(around.cwd, shown.trim()), shown));
  const file = join(out, share ? `${name}-${share.part}-of-${share.of}.verdicts` : `${name}.verdicts`);
  const lines = keepLines(file);
  kept.add(lines.before);

  const about = aboutOf(question, values, version);
  const start: JudgeStart = {
    argv: call.argv,
    cwd: around.cwd,
    ...(around.modelsFolder !== undefined && { modelsFolder: around.modelsFolder }),
  };
  const script = new URL('dist/src/cli/ranges/judge-worker.js', packageFolder());
  // its text names the program it takes in by that program's content: no verdict of another program is taken for this one's
  const judged = `${about} ${readFileSync(script, 'utf8')}`;
  const judges = await startJudges(script, start, options.workers);
  const line = options.quiet ? NO_PROGRESS : progressLine(around);
  const stop = (): void => {
    line.end();
    around.err.write(
      `stopped: every verdict so far is kept in ${relative(around.cwd, file)}; the same line goes on from there\n`,
    );
    process.exit(130);
  };
  process.once('SIGINT', stop);
  try {
    const judge = kept.judging(
      judged,
      async (at) => (await judges.ask({ at } satisfies Asking)) as Answer,
      lines.add,
    );
    const chosen = await judge({});
    if (!chosen.sound) {
      around.err.write(
        `tenonwright: the design itself has an error, so no range is told round it: ${chosen.text}\n`,
      );
      return FAILED_CHECKS;
    }
    const glance = glanceOf(question, values);
    const progress = timeLeft(line.step);
    if (share) {
      await workShare(wanted, share, judge, glance, progress);
      line.end();
      if (!options.quiet)
        around.out.write(`Share ${share.part} of ${share.of}: ${relative(around.cwd, file)}\n`);
      return DONE;
    }
    const curing = kept.judging(
      `${judged} cures`,
      async (at) => (await judges.ask({ at, cures: true } satisfies Asking)) as Answer,
      lines.add,
    );
    const ranges = await rangesOf(wanted, judge, glance, progress, options.cures ? curing : undefined);
    line.end();
    const say = speaker(options.units);
    const files = rangeFiles(ranges, about, question.model.title, say);
    const folder = await writeFolder(out, name, files);
    if (!options.quiet)
      around.out.write(
        `${told(ranges, say, around)}\nFiles: ${relative(around.cwd, folder)}\nThe plan carries them: add --ranges ${relative(around.cwd, join(folder, 'ranges.json'))} to the line that makes it.\n`,
      );
    return DONE;
  } finally {
    process.off('SIGINT', stop);
    line.end();
    await judges.end();
  }
}

function wantedIn({ across, together }: RangeOptions, { question, values, given }: Asked): Wanted {
  const { model, units } = question;
  const dimensions = knobs(model, model.complete(values, toolsOf(question.shop)), given)
    .map((knob) => dimensionOf(knob, units))
    .filter((dimension) => isUsed(question, values, dimension));
  return { dimensions, across: across === undefined ? undefined : twoOf(across, dimensions), together };
}

function twoOf(words: string, dimensions: readonly Dimension[]): readonly [Dimension, Dimension] {
  const names = words.split(',').map((word) => optionName(word.trim().replace(/^--/, '')));
  const known = dimensions.map(({ name }) => optionName(name));
  const unknown = names.find((name) => !known.includes(name));
  if (unknown !== undefined)
    throw new InputError(
      'across-unknown',
      `--across names '${unknown}', and there is no such dimension${didYouMean(unknown, known)}`,
    );
  const [first, second, ...more] = names.map((name) => dimensions[known.indexOf(name)]!);
  if (!first || !second || first === second || more.length > 0)
    throw new InputError(
      'across-not-two',
      `--across is '${words}': name two different dimensions, like height,rake`,
    );
  return [first, second];
}

function shareIn(words: string): Share {
  const [, part, of] = /^(\d{1,4})\/(\d{1,4})$/.exec(words.trim()) ?? [];
  const share = { part: Number(part), of: Number(of) };
  if (part === undefined || share.part < 1 || share.part > share.of)
    throw new InputError(
      'share-unreadable',
      `--share is '${words}': write which of how many, from 1/8 to 8/8`,
    );
  return share;
}

/** Tells percent done and, from the pace so far, the time left. */
function timeLeft(step: (name: string, done: number, total: number) => void): (done: number) => void {
  const start = performance.now();
  return (done) => {
    const left = (performance.now() - start) * (1 / Math.max(done, 1e-9) - 1);
    step(`finding ranges${done >= 1 ? '' : `, about ${spell(left)} left`}`, Math.floor(done * 100), 100);
  };
}

const spell = (ms: number): string =>
  ms < 90_000 ? `${Math.ceil(ms / 1000)} s` : `${Math.ceil(ms / 60_000)} min`;

/** The ranges as the person reads them in a terminal. */
function told({ alone, map, together, tried }: Ranges, say: Say, around: Surroundings): string {
  const width = columnsOf(around);
  const rows = alone.map(({ dimension, span, below, above }) => [
    dimension.label,
    valueWords(dimension, dimension.value, say),
    `${valueWords(dimension, span.from, say)} to ${valueWords(dimension, span.to, say)}`,
    [below, above]
      .flatMap((beyond) => (beyond ? [`${valueWords(dimension, beyond.value, say)}: ${beyond.code}`] : []))
      .join('; ') || 'its stated range ends first',
  ]);
  const broken = alone.filter(({ again }) => again.length > 0).map(({ dimension }) => dimension.label);
  return [
    table([['dimension', 'chosen', 'sound', 'what ends it'], ...rows], width),
    ...(broken.length > 0 ? [`Sound again further away: ${broken.join(', ')}; the paper tells where.`] : []),
    ...(map
      ? [
          `Map of ${map.across.label} and ${map.up.label}: ${map.columns.length} by ${map.rows.length} places.`,
        ]
      : []),
    ...(together
      ? [
          `All at once: ${together.tried} random designs within these limits, none with an error.`,
          table(
            together.limits.map(({ dimension, from, to }) => [
              dimension.label,
              `${valueWords(dimension, from, say)} to ${valueWords(dimension, to, say)}`,
            ]),
            width,
          ),
        ]
      : []),
    ...wrap(`${tried} designs were judged in full; between those that were tried nothing is claimed.`, width),
    '',
  ].join('\n');
}

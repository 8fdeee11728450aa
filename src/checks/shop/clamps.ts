import type { Clamp } from '../../shop/index.js';
import { NOISE } from '../../tolerances.js';
import type { Bench } from '../bench/index.js';
import type { Finding } from '../finding/index.js';

/** Steps that clamps are bought in, mm. */
const STEP = 10;

const upTo = (mm: number): number => Math.ceil(mm / STEP - NOISE) * STEP;

const CODES = {
  opening: 'clamp-too-short',
  throat: 'clamp-throat-too-short',
  count: 'clamps-too-few',
} as const;

/** Ids one after the other told by the first and the last: `C5, C7 to C9`. */
const inRuns = (ids: readonly string[]): string => {
  const runs: string[][] = [];
  for (const id of ids) {
    const run = runs.at(-1);
    if (run && Number(id.slice(1)) === Number(run.at(-1)!.slice(1)) + 1) run.push(id);
    else runs.push([id]);
  }
  return runs.map((run) => (run.length > 2 ? `${run[0]} to ${run.at(-1)}` : run.join(', '))).join(', ');
};

/** Every clamp of every stage is at hand: it opens so far, reaches in so far, and there are enough at once. */
export function clampsAtHand({ clamps, held, say }: Bench): readonly Finding[] {
  if (!clamps || !held) return [];
  const failed = clamps.clamps.filter(({ verdict }) => verdict === 'failed');
  const kindOf = ({ stage, wants }: Clamp) => `${stage} ${wants}`;
  return [...new Set(failed.map(kindOf))].map((kind): Finding => {
    const mine = failed.filter((clamp) => kindOf(clamp) === kind);
    const { stage, wants = 'count' } = mine[0]!;
    const opening = Math.max(...mine.map((clamp) => clamp.opening));
    const throat = Math.max(...mine.map((clamp) => clamp.throat));
    const { clamps: owned, name } = held.shop;
    const longest = Math.max(...owned.map((clamp) => clamp.opening));
    const reach = Math.max(
      ...owned.filter((clamp) => clamp.opening >= opening).map((clamp) => clamp.throat),
      0,
    );
    const needed = clamps.clamps.filter((clamp) => clamp.stage === stage).length;
    const many = mine.length > 1;
    const told = `clamp${many ? 's' : ''} ${inRuns(mine.map(({ id }) => id))}`;
    // figures that would print alike are printed finer
    const finer = (mm: number, other: number) =>
      say.length(mm) === say.length(other) ? say.fine(mm) : say.length(mm);
    const why = {
      opening: `${told} must open ${finer(opening, longest)}; the longest at hand (${name}) opens ${finer(longest, opening)}`,
      throat: `${told} must reach in ${finer(throat, reach)} from the bar and open ${say.length(opening)}; the deepest at hand that opens so far reaches ${finer(reach, throat)}`,
      count: `no clamp at hand (${name}) is left for ${told}: the stage takes ${needed} at once`,
    }[wants];
    const figures = {
      opening: [longest, opening],
      throat: [reach, throat],
      count: [needed - mine.length, needed],
    }[wants];
    return {
      code: CODES[wants],
      level: 'warning',
      subjects: mine.map(({ id }) => id),
      measured: figures[0]!,
      limit: figures[1]!,
      unit: wants === 'count' ? '' : 'mm',
      message: `stage ${stage} of the glue-up: ${why}`,
      remedy: `borrow or buy ${mine.length} that open${many ? '' : 's'} ${say.length(upTo(opening))} with a throat of ${say.length(upTo(throat))}, and add ${many ? 'them' : 'it'} to clamps in the shop file; or hold the joint with a strap`,
      basis: 'the clamps the shop file names',
    };
  });
}

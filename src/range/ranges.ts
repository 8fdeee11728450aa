import { type MapOf, mapOf } from './across.js';
import { type Alone, aloneOf, type Beyond } from './alone.js';
import type { At, Glance, Judge, Unsound } from './answer.js';
import type { Dimension } from './dimension.js';
import { type Box, togetherOf } from './together.js';

/** Columns and rows of a map. */
const MAP_SIZE = 40;

/** For which dimensions a design stays sound: what was tried, and nothing beyond it. */
export interface Ranges {
  readonly alone: readonly Alone[];
  readonly map: MapOf | undefined;
  readonly together: Box | undefined;
  /** Full verdicts these figures stand on. */
  readonly tried: number;
}

/** What is looked for. */
export interface Wanted {
  /** Every dimension, whether it is moved by itself or not. */
  readonly dimensions: readonly Dimension[];
  /** Two of them, the one drawn across and the one drawn upwards. */
  readonly across: readonly [Dimension, Dimension] | undefined;
  /** Random verdicts inside the box of all dimensions; none is looked for when undefined. */
  readonly together: number | undefined;
  /** Columns and rows of the map. */
  readonly mapSize?: number;
}

/** One of equal shares: the second of eight is `{ part: 2, of: 8 }`. */
export interface Share {
  readonly part: number;
  readonly of: number;
}

/** Tells how much of the work is done, as a share of 1. */
export type Progress = (done: number) => void;

/**
 * Finds the ranges. The result is the same whatever the order in which verdicts come.
 *
 * @param judge full verdicts
 * @param glance what the data alone say
 * @param curing full verdicts with what else would have to change, asked for just beyond each end
 */
export async function rangesOf(
  wanted: Wanted,
  judge: Judge,
  glance: Glance,
  progress: Progress,
  curing?: Judge,
): Promise<Ranges> {
  const asked = new Set<string>();
  const unsound = new Map<string, readonly [At, Unsound]>();
  const counting: Judge = async (at) => {
    const key = JSON.stringify(at);
    asked.add(key);
    const answer = await judge(at);
    if (!answer.sound) unsound.set(key, [at, answer]);
    return answer;
  };
  const parts = wanted.dimensions.length + (wanted.across ? wanted.dimensions.length : 0);
  let done = 0;
  const count = (share: number) => {
    done += share;
    progress(parts === 0 ? 1 : Math.min(1, done / (wanted.together === undefined ? parts : 3 * parts)));
  };
  const alone = await Promise.all(
    wanted.dimensions.map(async (dimension) => {
      const found = await aloneOf(dimension, counting, glance);
      const cured = curing ? await withCures(found, curing) : found;
      count(1);
      return cured;
    }),
  );
  const size = wanted.mapSize ?? MAP_SIZE;
  const map = wanted.across && (await mapOf(wanted.across, counting, glance, { columns: size, rows: size }));
  if (map) count(wanted.dimensions.length);
  const together =
    wanted.together === undefined
      ? undefined
      : await togetherOf(alone, wanted.together, counting, byKey(unsound));
  progress(1);
  return { alone, map, together, tried: asked.size };
}

/** A dimension's range with what else would have to change beyond its ends. */
async function withCures(found: Alone, curing: Judge): Promise<Alone> {
  const cured = async (beyond: Beyond | undefined): Promise<Beyond | undefined> => {
    if (!beyond) return undefined;
    const answer = await curing({ [found.dimension.name]: beyond.value });
    return answer.sound ? beyond : { ...answer, value: beyond.value };
  };
  return { ...found, below: await cured(found.below), above: await cured(found.above) };
}

/** In an order that does not depend on which answer came first. */
const byKey = <T>(of: ReadonlyMap<string, T>): readonly T[] =>
  [...of].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, one]) => one);

/** Asks for the verdicts of one share; what they come to is told when the shares are joined. */
export async function workShare(
  wanted: Wanted,
  { part, of }: Share,
  judge: Judge,
  glance: Glance,
  progress: Progress,
): Promise<void> {
  const mine = wanted.dimensions.filter((_, i) => i % of === part - 1);
  let done = 0;
  const parts = mine.length + (wanted.across ? 1 : 0);
  const count = () => {
    done += 1;
    progress(done / parts);
  };
  await Promise.all(mine.map((dimension) => aloneOf(dimension, judge, glance).then(count)));
  if (!wanted.across) return;
  const size = wanted.mapSize ?? MAP_SIZE;
  await mapOf(wanted.across, judge, glance, { columns: size, rows: size, share: { part, of } });
  count();
}

import { dot, type Vec3 } from '../frame/index.js';
import { movedBy, rising, type Season, strainOf } from '../movement/index.js';
import { SAME_POINT } from '../tolerances.js';
import { PRACTICE } from './practice.js';
import { LENGTH_STEP } from './row.js';
import type { Side } from './side.js';

/** Kept beyond what a tenon swells, mm. Common practice, no source. */
export const SWELL_SPARE = 0.5;

/**
 * How much a tenon grows more than its mortise, from the day it is glued until the wood is dampest, as a share of its width: in
 * the worse of its two boards.
 *
 * @param tenonWood what the tenon is of; one of a wood nobody told is taken not to grow
 * @param along unit, the way the mortises run, assembly frame
 */
export function swelling(
  sides: readonly [Side, Side],
  along: Vec3,
  season: Season,
  tenonWood: string | undefined,
): number {
  const own = tenonWood === undefined ? 0 : strainOf(tenonWood, season.cut).width;
  const moved = sides.map(({ board, place }) =>
    dot(movedBy(strainOf(board.material, season.cut), place, along), along),
  );
  return Math.max(own - Math.min(...moved), 0) * rising(season);
}

/**
 * What a tenon is narrower than its mortise, mm: the usual millimetre, and more where a wide one swells.
 *
 * @param share of its width that it grows
 * @param spare kept beyond that, mm
 * @example edgeOfTenon(120, 0.0082, 0.5) // 1.5
 */
export const edgeOfTenon = (width: number, share: number, spare: number): number =>
  Math.max(PRACTICE.edgeClearance, stepped(share * width + spare));

/** What a tenon is narrower than its mortise, mm, where the length of the mortise is known: see {@link edgeOfTenon}. */
export const edgeInMortise = (length: number, share: number, spare: number): number =>
  Math.max(PRACTICE.edgeClearance, stepped((share * length + spare) / (1 + share)));

const stepped = (size: number): number => Math.ceil(size / LENGTH_STEP - SAME_POINT) * LENGTH_STEP;

import type { Say } from '../../length/index.js';
import { NOISE } from '../../tolerances.js';
import type { Figure } from './setup-card.js';

/** A figure that the shop has one number for, or none. */
export const atLeast = (
  say: Say,
  name: string,
  needed: number,
  available: number | undefined,
  made: string,
  missing: string,
): Figure => judged(say, name, needed, available, available === undefined ? [missing] : [], made);

/**
 * A figure with its verdict: what is missing makes it not verified, whatever else is known.
 *
 * @param made how `needed` comes about, in words
 */
export function judged(
  say: Say,
  name: string,
  needed: number,
  available: number | undefined,
  missing: readonly string[],
  made: string,
): Figure {
  const verdict =
    missing.length > 0 || available === undefined
      ? 'not verified'
      : available >= needed - NOISE
        ? 'passed'
        : 'failed';
  const [needs, has, lacks] = say.lengths(
    ...(available === undefined ? [needed] : [needed, available, Math.abs(needed - available)]),
  );
  const had = available === undefined ? '' : `; has ${has}`;
  const short = available !== undefined && available < needed - NOISE ? `: ${lacks} short` : '';
  return {
    name,
    needed,
    available,
    verdict,
    text: `needs ${needs} (${made})${had}${short}${missing.length > 0 ? `; ${lacking(missing)}` : ''}`,
  };
}

/** What a person would have to write into the shop file. */
export const lacking = (missing: readonly string[]): string =>
  `the shop file does not say ${missing.join(', ')}`;

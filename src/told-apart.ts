import { SAME_LENGTH } from './tolerances.js';

/** One text for each number. */
export type Texts<T extends readonly number[]> = { readonly [K in keyof T]: string };

/**
 * Lengths of one sentence, such as a figure and its limit, so that those that differ read apart and none but 0 reads as 0: all
 * said the first way that does it, or the last.
 *
 * @param lengths mm, finite
 * @param ways how a length can be said, coarse to fine; one at least
 * @example toldApart([31.04, 31], [(mm) => mm.toFixed(1), (mm) => mm.toFixed(2)]) // ['31.04', '31.00']
 */
export function toldApart<T extends readonly number[]>(
  lengths: T,
  ways: readonly ((mm: number) => string)[],
): Texts<T> {
  const all = [0, ...lengths];
  const apart = (say: (mm: number) => string) =>
    all.every((a, i) => all.slice(i + 1).every((b) => Math.abs(a - b) < SAME_LENGTH || say(a) !== say(b)));
  const said = lengths.map(ways.find(apart) ?? ways.at(-1)!);
  return said as unknown as Texts<T>;
}

import { distance } from 'fastest-levenshtein';

/** What another first letter weighs, in letters: people seldom get the first one wrong. */
const FIRST_LETTER = 0.5;

/** No name is longer; of a longer text only the plain distance is asked for. */
const LONGEST_NAME = 60;

/**
 * The known name a person most likely meant. A letter too many, too few or wrong counts once, and so do two neighbours that
 * changed places; of names about as near one with the same first letter goes first, then the one known first.
 *
 * @returns undefined when none is near: more than half of its letters differ
 */
export function nearest(name: string, known: readonly string[]): string | undefined {
  const near = known
    .map((one) => ({ one, apart: lettersApart(name.toLowerCase(), one.toLowerCase()) }))
    .filter(({ one, apart }) => apart <= Math.floor(Math.max(name.length, one.length) / 2))
    .map(({ one, apart }) => ({ one, apart: apart + (startsAlike(name, one) ? 0 : FIRST_LETTER) }));
  return near.reduce<(typeof near)[number] | undefined>(
    (best, one) => (best === undefined || one.apart < best.apart ? one : best),
    undefined,
  )?.one;
}

const startsAlike = (a: string, b: string): boolean => a[0]?.toLowerCase() === b[0]?.toLowerCase();

/** Letters that differ, one swap of neighbours counted once. */
function lettersApart(name: string, known: string): number {
  const swaps = name.length > LONGEST_NAME ? [] : Array.from(name.slice(1), (_, at) => swapped(name, at));
  return Math.min(distance(name, known), ...swaps.map((other) => distance(other, known) + 1));
}

const swapped = (name: string, at: number): string =>
  name.slice(0, at) + name[at + 1]! + name[at]! + name.slice(at + 2);

/** `: did you mean seat-length?`, or what there is when nothing is near. */
export function didYouMean(name: string, known: readonly string[]): string {
  const found = nearest(name, known);
  return found === undefined ? `; known are ${[...known].sort().join(', ')}` : `: did you mean ${found}?`;
}

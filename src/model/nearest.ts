import { closest, distance } from 'fastest-levenshtein';

/**
 * The known name a person most likely meant.
 *
 * @returns undefined when none is near: more than half of its letters differ
 */
export function nearest(name: string, known: readonly string[]): string | undefined {
  if (known.length === 0) return undefined;
  const found = closest(name, known);
  return distance(name, found) <= Math.floor(Math.max(name.length, found.length) / 2) ? found : undefined;
}

/** `: did you mean seat-length?`, or what there is when nothing is near. */
export function didYouMean(name: string, known: readonly string[]): string {
  const found = nearest(name, known);
  return found === undefined ? `; known are ${[...known].sort().join(', ')}` : `: did you mean ${found}?`;
}

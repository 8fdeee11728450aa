/**
 * A short mark for each board, written on it from the first cut: the initials of its id, numbered where two would be alike.
 * The number follows a hyphen, so that no mark looks like a tenon's or an offcut's.
 *
 * @example boardMarks(['left-side', 'tread', 'top-rail', 'toe-rail']) // LS, T, TR-1, TR-2
 */
export function boardMarks(ids: readonly string[]): ReadonlyMap<string, string> {
  const initials = (id: string): string =>
    id
      .split('-')
      .map((word) => (/^\d/.test(word) ? `-${word}` : word.charAt(0).toUpperCase()))
      .join('');
  const taken = new Set<string>();
  return new Map(
    ids.map((id) => {
      const short = initials(id);
      const alike = ids.filter((other) => initials(other) === short);
      let number = alike.indexOf(id) + 1;
      const free = () => (alike.length === 1 && number === 1 ? short : `${short}-${number}`);
      while (taken.has(free())) number += 1;
      taken.add(free());
      return [id, free()];
    }),
  );
}

/** How the mark tells face, edge and end: common practice, no source. */
export const markWords = (mark: string): string =>
  `${mark} on the reference face, its V pointing to the reference edge, a bar at the reference end`;

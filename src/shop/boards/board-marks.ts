/**
 * A short mark for each board, written on it from the first cut: the initials of its id, or the first two letters of a single
 * word, numbered where two would be alike. Two letters or more, and a number only after a hyphen: no mark looks like that of a
 * tenon, a mortise or a card (`MARK_LETTERS`).
 *
 * @example boardMarks(['left-side', 'shelf', 'top-rail', 'toe-rail']) // LS, SH, TR-1, TR-2
 */
export function boardMarks(ids: readonly string[]): ReadonlyMap<string, string> {
  const initials = (id: string): string => {
    const words = id.split('-');
    const letters = words.filter((word) => !/^\d/.test(word)).length;
    return words
      .map((word) => (/^\d/.test(word) ? `-${word}` : word.slice(0, letters === 1 ? 2 : 1).toUpperCase()))
      .join('');
  };
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

/** Of each board, by its number: the boards it takes along when it travels. */
export type Follows = ReadonlyMap<number, readonly number[]>;

/**
 * The groups of boards that travel together, each after the groups it takes along.
 *
 * Boards that take each other along are one group (strongly connected: Tarjan, Depth-first search and linear graph
 * algorithms, 1972). A set of boards that can be moved exists exactly where there is more than one group (Wilson and Latombe,
 * Geometric reasoning about mechanical assembly, 1994).
 */
export function travellingGroups(
  boards: readonly number[],
  follows: Follows,
): readonly (readonly number[])[] {
  const reached = new Map<number, number>();
  const earliest = new Map<number, number>();
  const open: number[] = [];
  const standing = new Set<number>();
  const groups: number[][] = [];
  const visit = (board: number): void => {
    reached.set(board, reached.size);
    earliest.set(board, reached.get(board)!);
    open.push(board);
    standing.add(board);
    for (const next of follows.get(board) ?? []) {
      if (!reached.has(next)) visit(next);
      else if (!standing.has(next)) continue;
      earliest.set(board, Math.min(earliest.get(board)!, earliest.get(next)!));
    }
    if (earliest.get(board) !== reached.get(board)) return;
    const group = open.splice(open.lastIndexOf(board));
    for (const one of group) standing.delete(one);
    groups.push(group);
  };
  for (const board of boards) if (!reached.has(board)) visit(board);
  return groups;
}

/** Every set of boards that can travel without the others, up to a number of them: boards with all they take along. */
export function travellingSets(boards: ReadonlySet<number>, follows: Follows, most: number) {
  const least = [...boards].map((board) => travelsWith(board, follows));
  const keyOf = (set: ReadonlySet<number>) => [...set].toSorted((a, b) => a - b).join();
  const sets = new Map(least.map((set) => [keyOf(set), set]));
  for (const [, set] of sets) {
    for (const more of least) {
      if (sets.size >= most) return [...sets.values()];
      const both = new Set([...set, ...more]);
      sets.set(keyOf(both), both);
    }
  }
  return [...sets.values()];
}

/** A board with everything it takes along, and what that takes along. */
function travelsWith(board: number, follows: Follows): ReadonlySet<number> {
  const found = new Set([board]);
  for (const one of found) for (const next of follows.get(one) ?? []) found.add(next);
  return found;
}

/** Whether a set of boards can travel without any other. */
export const travelsAlone = (set: ReadonlySet<number>, follows: Follows): boolean =>
  [...set].every((board) => (follows.get(board) ?? []).every((next) => set.has(next)));

/** The pieces a set of boards falls into, each held together by joints. */
export function piecesOf(
  set: ReadonlySet<number>,
  neighbours: ReadonlyMap<number, readonly number[]>,
): readonly ReadonlySet<number>[] {
  const left = new Set(set);
  const pieces: Set<number>[] = [];
  for (const start of set) {
    if (!left.delete(start)) continue;
    const piece = new Set([start]);
    for (const one of piece) {
      for (const next of neighbours.get(one) ?? []) if (left.delete(next)) piece.add(next);
    }
    pieces.push(piece);
  }
  return pieces;
}

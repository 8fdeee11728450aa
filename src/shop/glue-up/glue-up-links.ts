/** What boards are jointed to, by their ids. */
export type Neighbours = ReadonlyMap<string, readonly string[]>;

/**
 * Boards that hold others together: without one of them the rest falls into pieces.
 *
 * One walk over the joints (Tarjan, Depth-first search and linear graph algorithms, 1972): a board is such a link when
 * something reached through it leads back to nothing that was reached before it.
 *
 * @param boards ids, all in one piece
 * @param neighbours of each board; those that are not among the boards are passed over
 */
export function linksAmong(boards: readonly string[], neighbours: Neighbours): ReadonlySet<string> {
  const among = new Set(boards);
  const links = new Set<string>();
  const reached = new Map<string, number>();
  const earliest = new Map<string, number>();
  const root = boards[0];
  if (root === undefined) return links;
  let branches = 0;
  const begin = (board: string, from: string | undefined) => {
    reached.set(board, reached.size);
    earliest.set(board, reached.get(board)!);
    return { board, from, next: 0, onwards: (neighbours.get(board) ?? []).filter((id) => among.has(id)) };
  };
  const lower = (board: string, to: number) => earliest.set(board, Math.min(earliest.get(board)!, to));
  // a walk by hand: a long chain of boards would be too deep to call through
  const walk = [begin(root, undefined)];
  for (let at = walk.at(-1); at; at = walk.at(-1)) {
    const to = at.onwards[at.next];
    at.next += 1;
    if (to !== undefined) {
      if (!reached.has(to)) walk.push(begin(to, at.board));
      else if (to !== at.from) lower(at.board, reached.get(to)!);
      continue;
    }
    walk.pop();
    if (at.from === undefined) continue;
    lower(at.from, earliest.get(at.board)!);
    if (at.from === root) branches += 1;
    else if (earliest.get(at.board)! >= reached.get(at.from)!) links.add(at.from);
  }
  if (branches > 1) links.add(root);
  return links;
}

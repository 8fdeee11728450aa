import type { Entry } from './glue-up-entry.js';
import { linksAmong } from './glue-up-links.js';
import { type Blocked, joined, type Move, type OrderStep } from './glue-up-move.js';
import type { Order } from './glue-up-order.js';

/**
 * An order for a design of many boards, one board at a time: taken apart board by board, then read backwards.
 *
 * A board that can be taken off the whole can be taken off any part of it, so nothing taken off is ever put back.
 * Sub-assemblies are not tried.
 */
export function peeled(
  boards: readonly string[],
  entries: readonly Entry[],
  blocked: readonly Blocked[],
): Order {
  const steps: OrderStep[] = [];
  const jointsOf = entriesByBoard(boards, entries);
  const neighbours = new Map(boards.map((id) => [id, jointsOf.get(id)!.map((entry) => otherOf(entry, id))]));
  const left = new Set(boards);
  // the best way off for a board is worked out again only when a board it meets has been taken off
  const ways = new Map<string, Move | undefined>();
  const crossing = (board: string) => jointsOf.get(board)!.filter((entry) => left.has(otherOf(entry, board)));
  const stepOf = (board: string) =>
    joined(
      [board],
      [...left].filter((id) => id !== board),
      crossing(board),
      blocked,
    );
  while (left.size > 1) {
    // of the last two boards either may be the one that travels
    if (left.size === 2) ways.clear();
    const links = linksAmong([...left], neighbours);
    const off = [...left].flatMap((board): Removal[] => {
      if (links.has(board)) return [];
      if (!ways.has(board)) ways.set(board, stepOf(board)?.move);
      const move = ways.get(board);
      return move ? [{ board, move }] : [];
    });
    const taken = off
      .filter(({ move }) => move.freedom !== 'locked')
      .reduce<Removal | undefined>(
        (best, one) => (!best || easier(one.move, best.move) ? one : best),
        undefined,
      );
    if (!taken) {
      const among = entries.filter(({ owner, receiver }) => left.has(owner) && left.has(receiver));
      return {
        steps: [],
        conflict: {
          boards: [...left],
          joints: among.map(({ joint }) => joint.id),
          excess: Math.min(...off.map(({ move }) => move.excess)),
        },
      };
    }
    const { board } = taken;
    steps.unshift(stepOf(board)!);
    left.delete(board);
    const met = blocked.flatMap(({ moving, still }) =>
      moving === board ? [still] : still === board ? [moving] : [],
    );
    for (const id of [...neighbours.get(board)!, ...met]) ways.delete(id);
  }
  return { steps };
}

/** A board that leaves the rest in one piece, with its best move. */
interface Removal {
  readonly board: string;
  readonly move: Move;
}

const otherOf = ({ owner, receiver }: Entry, board: string): string => (owner === board ? receiver : owner);

function entriesByBoard(
  boards: readonly string[],
  entries: readonly Entry[],
): ReadonlyMap<string, readonly Entry[]> {
  const found = new Map(boards.map((id): [string, Entry[]] => [id, []]));
  for (const entry of entries) {
    // joints to boards outside are none of this order
    if (!found.has(entry.owner) || !found.has(entry.receiver)) continue;
    found.get(entry.owner)!.push(entry);
    found.get(entry.receiver)!.push(entry);
  }
  return found;
}

/** Little spring before much, then few joints at once. */
function easier(move: Move, best: Move): boolean {
  const more = move.excess - best.excess;
  return more < -1e-9 || (more <= 1e-9 && move.entries.length < best.entries.length);
}

import type { Entry } from './glue-up-entry.js';
import { type Blocked, joined, type OrderStep } from './glue-up-move.js';
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
  let left = boards;
  while (left.length > 1) {
    const off = removals(left, entries, blocked);
    const taken = off
      .filter(({ move }) => move.freedom !== 'locked')
      .reduce<OrderStep | undefined>((best, step) => (!best || easier(step, best) ? step : best), undefined);
    if (!taken) {
      const among = entries.filter(({ owner, receiver }) => left.includes(owner) && left.includes(receiver));
      return {
        steps: [],
        conflict: {
          boards: left,
          joints: among.map(({ joint }) => joint.id),
          excess: Math.min(...off.map(({ move }) => move.excess)),
        },
      };
    }
    steps.unshift(taken);
    left = taken.still;
  }
  return { steps };
}

/** Every single board that leaves the rest in one piece, with its best move. */
function removals(
  left: readonly string[],
  entries: readonly Entry[],
  blocked: readonly Blocked[],
): readonly OrderStep[] {
  return left.flatMap((board) => {
    const rest = left.filter((id) => id !== board);
    const crossing = entries.filter(
      ({ owner, receiver }) =>
        (owner === board && rest.includes(receiver)) || (receiver === board && rest.includes(owner)),
    );
    if (crossing.length === 0 || !inOnePiece(rest, entries)) return [];
    const step = joined([board], rest, crossing, blocked);
    return step ? [step] : [];
  });
}

/** Little spring before much, then few joints at once. */
function easier(step: OrderStep, best: OrderStep): boolean {
  const more = step.move.excess - best.move.excess;
  return more < -1e-9 || (more <= 1e-9 && step.move.entries.length < best.move.entries.length);
}

function inOnePiece(boards: readonly string[], entries: readonly Entry[]): boolean {
  const reached = new Set(boards.slice(0, 1));
  for (let before = -1; before !== reached.size; ) {
    before = reached.size;
    for (const { owner, receiver } of entries) {
      if (reached.has(owner) && boards.includes(receiver)) reached.add(receiver);
      if (reached.has(receiver) && boards.includes(owner)) reached.add(owner);
    }
  }
  return reached.size === boards.length;
}

import type { Entry } from './glue-up-entry.js';
import { type Blocked, joined, type OrderStep } from './glue-up-move.js';
import { peeled } from './glue-up-peel.js';

/** The boards that cannot be brought together, and how near their best move comes. */
export interface Conflict {
  readonly boards: readonly string[];
  readonly joints: readonly string[];
  /** Of the least locked of all moves, mm: what would have to be sprung. */
  readonly excess: number;
}

export interface Order {
  readonly steps: readonly OrderStep[];
  /** Why there is no order; absent when there is one. */
  readonly conflict?: Conflict;
}

/** Above this number of boards only moves of single boards are tried: every split of more would take too long. */
const EVERY_SPLIT_UP_TO = 14;

/** What an order costs, compared from left to right: sprung at all, mm sprung, most joints in one move, groups moved. */
type Cost = readonly [sprung: number, excess: number, mostJoints: number, groups: number];

interface Best {
  readonly cost: Cost;
  readonly steps: readonly OrderStep[];
}

/**
 * The best order in which boards joined to each other can be brought together, two groups at a time.
 *
 * Every split of a set of boards into two groups is weighed, each group's own best order being known: the order found is
 * best of all, and there is none only when no order at all works. Free moves go before sprung ones, then little spring,
 * then few joints at a time, then single boards before groups.
 *
 * @param boards ids, all connected by the entries
 */
export function orderOf(
  boards: readonly string[],
  entries: readonly Entry[],
  blocked: readonly Blocked[] = [],
): Order {
  if (boards.length > EVERY_SPLIT_UP_TO) return peeled(boards, entries, blocked);
  const index = new Map(boards.map((id, i) => [id, i]));
  const ends = entries.map((entry) => ({
    entry,
    a: 1 << index.get(entry.joint.a)!,
    b: 1 << index.get(entry.joint.b)!,
  }));
  const neighbours = boards.map((_, i) =>
    ends.reduce((all, { a, b }) => all | (a === 1 << i ? b : 0) | (b === 1 << i ? a : 0), 0),
  );
  const known = new Map<number, Best | undefined>();
  const whole = 2 ** boards.length - 1;

  const connected = (set: number): boolean => {
    let reached = set & -set;
    for (let before = 0; before !== reached; ) {
      before = reached;
      for (let i = 0; i < boards.length; i += 1) if (reached & (1 << i)) reached |= neighbours[i]! & set;
    }
    return reached === set;
  };
  const crossing = (one: number, other: number) =>
    ends.filter(({ a, b }) => (one & a && other & b) || (one & b && other & a)).map(({ entry }) => entry);
  const namesOf = (set: number) => boards.filter((_, i) => set & (1 << i));

  /** Both halves of every split of a set; the first half holds its lowest board. */
  function splits(set: number): readonly [number, number][] {
    const lowest = set & -set;
    const rest = set & ~lowest;
    const halves: [number, number][] = [];
    for (let other = rest; other > 0; other = (other - 1) & rest) halves.push([set & ~other, other]);
    return halves.toReversed().filter(([one, other]) => connected(one) && connected(other));
  }

  function best(set: number): Best | undefined {
    if ((set & (set - 1)) === 0) return { cost: [0, 0, 0, 0], steps: [] };
    if (known.has(set)) return known.get(set);
    let found: Best | undefined;
    for (const [one, other] of splits(set)) {
      const move = joined(namesOf(one), namesOf(other), crossing(one, other), blocked);
      if (!move || move.move.freedom === 'locked') continue;
      const [still, moving] = [best(maskOf(move.still)), best(maskOf(move.moving))];
      if (!still || !moving) continue;
      const cost = costOf(still.cost, moving.cost, move);
      if (found === undefined || less(cost, found.cost)) {
        found = { cost, steps: [...still.steps, ...moving.steps, move] };
      }
    }
    known.set(set, found);
    return found;
  }
  const maskOf = (ids: readonly string[]) => ids.reduce((set, id) => set | (1 << index.get(id)!), 0);

  const found = best(whole);
  if (found) return { steps: found.steps };
  // the fewest boards that cannot be brought together say what is wrong
  const sizes = [...known.entries()].filter(([, order]) => order === undefined).map(([set]) => set);
  const stuck = sizes.reduce((least, set) => (bits(set) < bits(least) ? set : least), whole);
  const moves = splits(stuck).map(([one, other]) =>
    joined(namesOf(one), namesOf(other), crossing(one, other), []),
  );
  return {
    steps: [],
    conflict: {
      boards: namesOf(stuck),
      joints: ends.filter(({ a, b }) => stuck & a && stuck & b).map(({ entry }) => entry.joint.id),
      excess: Math.min(...moves.map((step) => step?.move.excess ?? Number.POSITIVE_INFINITY)),
    },
  };
}

function costOf(still: Cost, moving: Cost, step: OrderStep): Cost {
  const { move } = step;
  return [
    Math.max(still[0], moving[0], move.freedom === 'sprung' ? 1 : 0),
    still[1] + moving[1] + move.excess,
    Math.max(still[2], moving[2], move.entries.length),
    still[3] + moving[3] + (step.moving.length > 1 ? 1 : 0),
  ];
}

/** Costs within rounding of each other are equal: the split tried first stays. */
function less(a: Cost, b: Cost): boolean {
  for (let i = 0; i < a.length; i += 1) {
    if (Math.abs(a[i]! - b[i]!) > 1e-9) return a[i]! < b[i]!;
  }
  return false;
}

const bits = (set: number): number => set.toString(2).replaceAll('0', '').length;

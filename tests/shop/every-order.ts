import { type Blocked, bestMove, type Entry, moveDirections, type OrderStep } from '../../src/shop/index.js';

/** What an order costs, compared from left to right: sprung at all, mm sprung, most joints in one move, groups moved. */
export type Cost = readonly [sprung: number, excess: number, mostJoints: number, groups: number];

export interface Best {
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
export function bestOfEveryOrder(
  boards: readonly string[],
  entries: readonly Entry[],
  blocked: readonly Blocked[] = [],
): Best | undefined {
  const index = new Map(boards.map((id, i) => [id, i]));
  const ends = entries.map((entry) => ({
    entry,
    a: 1 << index.get(entry.joint.a)!,
    b: 1 << index.get(entry.joint.b)!,
  }));
  const neighbours = boards.map((_, i) =>
    ends.reduce((all, { a, b }) => all | (a === 1 << i ? b : 0) | (b === 1 << i ? a : 0), 0),
  );
  const directions = moveDirections(entries);
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
      const [a, b] = bits(one) < bits(other) ? [one, other] : [other, one];
      const [moving, still] = [namesOf(a), namesOf(b)];
      const move = bestMove(new Set(moving), new Set(still), crossing(a, b), blocked, directions);
      if (!move || move.freedom === 'locked') continue;
      const [first, second] = [best(b), best(a)];
      if (!first || !second) continue;
      const step = { moving, still, move };
      const cost = costOf(first.cost, second.cost, step);
      if (found === undefined || less(cost, found.cost)) {
        found = { cost, steps: [...first.steps, ...second.steps, step] };
      }
    }
    known.set(set, found);
    return found;
  }

  return best(whole);
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

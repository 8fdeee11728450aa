import { dot, scale, type Vec3 } from '../../frame/index.js';
import { NOISE } from '../../tolerances.js';
import { piecesOf, travellingGroups, travellingSets, travelsAlone } from './blocking-graph.js';
import type { Entry, Freedom } from './entry.js';
import { freedomOf } from './glue-up-entry.js';
import { type Blocked, joined, type OrderStep } from './glue-up-move.js';
import { moveDirections, oneWay } from './move-directions.js';

/** The boards that cannot be brought together, and how near their best move comes. */
export interface Conflict {
  readonly boards: readonly string[];
  readonly joints: readonly string[];
  /** What the worst tenon of the least locked move would have to be sprung, mm. */
  readonly excess: number;
  /** How many directions were tried. */
  readonly directions: number;
  /** Those of the boards that are panels held in grooves. */
  readonly panels?: readonly string[];
}

export interface Order {
  readonly steps: readonly OrderStep[];
  /** Why there is no order; absent when there is one. */
  readonly conflict?: Conflict;
}

/** Where solids tie boards together, so many sets that travel are looked at in a direction: every one of up to 12 groups. */
const MOST_SETS = 4096;

/** So many splits are given up, where solids tie boards together, before a piece is said to be stuck. */
const MOST_TRIES = 1000;

type Boards = ReadonlySet<number>;

/** A direction of travel, and between which boards something holds: when the first travels, the second must come along. */
interface Way {
  readonly direction: Vec3;
  readonly holds: readonly Hold[];
}

interface Hold {
  readonly from: number;
  readonly to: number;
  /** Of the tenons when only the first travels; locked where the solids are known to meet. */
  readonly freedom: Freedom;
  readonly excess: number;
}

/** Two groups and the direction the first travels in. */
interface Split {
  readonly moving: Boards;
  readonly direction: Vec3;
}

/**
 * An order in which boards joined to each other are brought together, two groups at a time, each by one translation.
 *
 * The whole is taken apart, and the order read backwards. For each of the finitely many directions of its joints a graph
 * tells which board takes which along; where it falls into several groups, those that take no other along come off (Wilson
 * and Latombe, Geometric reasoning about mechanical assembly, 1994). What comes off the whole comes off any part of it, so
 * nothing is ever put back, and groups of any size are found. Free moves go before sprung ones, then little spring, then moves
 * along one axis, as a maker turns from side frames to what joins them, then few joints at a time, then few boards.
 *
 * @param boards ids, all connected by the entries
 * @param blocked boards known to meet on the way: found on the solids
 */
export function orderOf(
  boards: readonly string[],
  entries: readonly Entry[],
  blocked: readonly Blocked[] = [],
): Order {
  const search = new Search(boards, entries, blocked);
  const whole = new Set(boards.keys());
  for (const most of ['free', 'sprung'] as const) {
    const steps: OrderStep[] = [];
    const stuck = search.takeApart(whole, most, steps);
    if (!stuck) return { steps: steps.toReversed() };
    if (most === 'sprung') return { steps: [], conflict: search.conflictOf(search.leastStuck(stuck)) };
  }
  return { steps: [] };
}

class Search {
  readonly #boards: readonly string[];
  readonly #entries: readonly Entry[];
  readonly #blocked: readonly Blocked[];
  readonly #ways: readonly Way[];
  readonly #neighbours: ReadonlyMap<number, readonly number[]>;
  readonly #number: ReadonlyMap<string, number>;
  readonly #stuck = new Map<string, Boards>();
  #tries = 0;

  constructor(boards: readonly string[], entries: readonly Entry[], blocked: readonly Blocked[]) {
    const number = new Map(boards.map((id, i) => [id, i]));
    this.#boards = boards;
    this.#number = number;
    this.#entries = entries.filter(({ owner, receiver }) => number.has(owner) && number.has(receiver));
    this.#blocked = blocked.filter(({ moving, still }) => number.has(moving) && number.has(still));
    this.#ways = moveDirections(this.#entries).map((direction) => this.#wayAlong(direction));
    const neighbours = new Map(boards.map((_, i): [number, number[]] => [i, []]));
    for (const { owner, receiver } of this.#entries) {
      const [a, b] = [number.get(owner)!, number.get(receiver)!];
      neighbours.get(a)!.push(b);
      neighbours.get(b)!.push(a);
    }
    this.#neighbours = neighbours;
  }

  #wayAlong(direction: Vec3): Way {
    const against = scale(direction, -1);
    const at = (id: string) => this.#number.get(id)!;
    const joints = this.#entries.flatMap((entry): Hold[] => {
      const [owner, receiver] = [at(entry.owner), at(entry.receiver)];
      const [forth, back] = [freedomOf(entry, direction), freedomOf(entry, against)];
      return [
        { from: owner, to: receiver, freedom: forth.freedom, excess: forth.excess },
        { from: receiver, to: owner, freedom: back.freedom, excess: back.excess },
      ];
    });
    const met = this.#blocked.flatMap((block): Hold[] => {
      const [moving, still] = [at(block.moving), at(block.still)];
      const shut = { freedom: 'locked', excess: Number.POSITIVE_INFINITY } as const;
      if (oneWay(direction, block.direction)) return [{ from: moving, to: still, ...shut }];
      // the other one travels the other way
      if (oneWay(against, block.direction)) return [{ from: still, to: moving, ...shut }];
      return [];
    });
    return { direction, holds: [...joints, ...met] };
  }

  /**
   * Takes boards apart until each lies by itself; steps are told last first.
   *
   * What joints hold comes apart whichever group is taken off first. Where solids meet too, another group is tried when what
   * is left by one is stuck.
   *
   * @returns boards that cannot be taken apart; undefined when all could
   */
  takeApart(set: Boards, most: Freedom, steps: OrderStep[], last?: Vec3): Boards | undefined {
    if (set.size < 2) return undefined;
    const key = `${most} ${[...set].toSorted((a, b) => a - b)}`;
    const known = this.#stuck.get(key);
    if (known) return known;
    let stuck: Boards | undefined;
    const told = steps.length;
    for (const split of this.#splits(set, most, last)) {
      const rest = without(set, split.moving);
      const step = joined(
        this.#names(split.moving),
        this.#names(rest),
        this.#entries.filter((entry) => this.#crosses(entry, split.moving, rest)),
        this.#blocked,
        split.direction,
      );
      const [moving, still] =
        step.moving[0] === this.#names(split.moving)[0] ? [split.moving, rest] : [rest, split.moving];
      steps.push(step);
      // read backwards: what travels is put together before what it goes to
      const { direction } = split;
      const left =
        this.takeApart(still, most, steps, direction) ?? this.takeApart(moving, most, steps, direction);
      if (!left) return undefined;
      steps.length = told;
      stuck ??= left;
      this.#tries += 1;
      if (this.#tries > MOST_TRIES || !this.#anyBlocked(set)) break;
    }
    this.#stuck.set(key, stuck ?? set);
    return stuck ?? set;
  }

  /** The ways to split a set into two pieces, the best first. */
  *#splits(set: Boards, most: Freedom, last: Vec3 | undefined): Generator<Split> {
    const graphs = this.#ways.map(({ direction, holds }) => {
      const inside = holds.filter(({ from, to }) => set.has(from) && set.has(to));
      const shut = inside.filter(
        ({ freedom }) => freedom === 'locked' || (freedom === 'sprung' && most === 'free'),
      );
      return { direction, holds: inside, follows: followsOf(shut) };
    });
    const rated = graphs.flatMap((graph) => {
      const groups = travellingGroups([...set], graph.follows);
      if (groups.length < 2) return [];
      return groups
        .map((group) => new Set(group))
        .filter((group) => travelsAlone(group, graph.follows))
        .map((moving) => ({ ...graph, moving, cost: costOf(graph, moving, last) }));
    });
    const inTwo = ({ moving }: Split) =>
      moving.size < set.size && this.#inOnePiece(moving) && this.#inOnePiece(without(set, moving));
    for (const split of rated.toSorted((a, b) => compared(a.cost, b.cost))) if (inTwo(split)) yield split;
    // joints alone always leave such a group; solids that meet may tie larger ones together
    if (!this.#anyBlocked(set)) return;
    for (const { direction, follows } of graphs) {
      for (const moving of travellingSets(set, follows, MOST_SETS)) {
        if (inTwo({ direction, moving })) yield { direction, moving };
      }
    }
  }

  #anyBlocked(set: Boards): boolean {
    return this.#blocked.some(({ moving, still }) =>
      [moving, still].every((id) => set.has(this.#number.get(id)!)),
    );
  }

  #inOnePiece(set: Boards): boolean {
    return piecesOf(set, this.#neighbours).length === 1;
  }

  /** Of boards that are stuck as few as are stuck still. */
  leastStuck(stuck: Boards): Boards {
    let least = stuck;
    for (const board of stuck) {
      if (!least.has(board)) continue;
      for (const piece of piecesOf(without(least, new Set([board])), this.#neighbours)) {
        const found = this.takeApart(piece, 'sprung', []);
        if (!found) continue;
        least = found;
        break;
      }
    }
    return least;
  }

  conflictOf(set: Boards): Conflict {
    return {
      boards: this.#names(set),
      joints: this.#entries
        .filter(({ owner, receiver }) => [owner, receiver].every((id) => set.has(this.#number.get(id)!)))
        .map(({ joint }) => joint.id),
      excess: Math.min(...this.#ways.map((way) => leastExcess(set, way))),
      directions: this.#ways.length,
    };
  }

  /** In the order of the design. */
  #names(set: Boards): readonly string[] {
    return this.#boards.filter((_, i) => set.has(i));
  }

  #crosses({ owner, receiver }: Entry, one: Boards, other: Boards): boolean {
    const [a, b] = [this.#number.get(owner)!, this.#number.get(receiver)!];
    return (one.has(a) && other.has(b)) || (one.has(b) && other.has(a));
  }
}

/** How much the worst tenon would have to be sprung for some group to come off along a way. */
function leastExcess(set: Boards, { holds }: Way): number {
  const within = holds.filter(({ from, to }) => set.has(from) && set.has(to));
  const limits = [...new Set(within.map(({ excess }) => excess))].toSorted((a, b) => a - b);
  const comesOff = (limit: number) =>
    travellingGroups([...set], followsOf(within.filter(({ excess }) => excess > limit))).length > 1;
  return limits.find(comesOff) ?? Number.POSITIVE_INFINITY;
}

function followsOf(holds: readonly Hold[]): ReadonlyMap<number, readonly number[]> {
  const follows = new Map<number, number[]>();
  for (const { from, to } of holds) {
    const known = follows.get(from);
    if (known) known.push(to);
    else follows.set(from, [to]);
  }
  return follows;
}

const without = (set: Boards, out: Boards): Boards => new Set([...set].filter((board) => !out.has(board)));

/**
 * Compared from left to right: mm sprung, another axis than before, joints closed, boards moved; boards named late come off
 * before early ones.
 */
type Cost = readonly [excess: number, turn: number, joints: number, boards: number, first: number];

function costOf({ direction, holds }: Way, moving: Boards, last: Vec3 | undefined): Cost {
  const crossing = holds.filter(({ from, to }) => moving.has(from) && !moving.has(to));
  const excess = crossing.reduce((sum, hold) => sum + hold.excess, 0);
  const turn = last === undefined || Math.abs(dot(direction, last)) > Math.SQRT1_2 ? 0 : 1;
  return [excess, turn, crossing.length, moving.size, -Math.min(...moving)];
}

/** Costs within rounding of each other are equal. */
function compared(a: Cost, b: Cost): number {
  for (let i = 0; i < a.length; i += 1) {
    if (Math.abs(a[i]! - b[i]!) > NOISE) return a[i]! - b[i]!;
  }
  return 0;
}

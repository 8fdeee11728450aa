import { add, length, scale, unit, type Vec3 } from '../../frame/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { GLUE_UP_PRACTICE as PRACTICE } from '../practice/index.js';
import type { Entry, Freedom, JointFreedom } from './entry.js';
import { freedomOf } from './glue-up-entry.js';
import { distinct, oneWay } from './move-directions.js';
import { wayInGroove } from './panel-entries.js';

/** Two boards that meet before their joints do when one travels towards the other. */
export interface Blocked {
  readonly moving: string;
  readonly still: string;
  /** Travel of the moving board, unit, assembly frame. */
  readonly direction: Vec3;
}

/** Two groups of boards brought together in one translation. */
export interface Move {
  /** Of the first group against the second, unit, assembly frame. */
  readonly direction: Vec3;
  readonly entries: readonly JointFreedom[];
  readonly freedom: Freedom;
  /** Sum of what must be sprung, mm. */
  readonly excess: number;
  /** From where every tenon is outside to the seat, mm. */
  readonly distance: number;
}

/** One step of an order: two groups become one. Board ids. */
export interface OrderStep {
  readonly moving: readonly string[];
  readonly still: readonly string[];
  readonly move: Move;
}

const RANK: Readonly<Record<Freedom, number>> = { free: 0, sprung: 1, locked: 2 };

/**
 * The best translation that closes every joint between two groups: tried are the axes of the joints, the mean of each two,
 * their sum, and directions known to work.
 *
 * @param first boards of the moving group
 * @param second boards of the group that stands still
 * @param crossing the joints between the two groups, at least one
 * @returns undefined when boards are in the way in every direction
 */
export function bestMove(
  first: ReadonlySet<string>,
  second: ReadonlySet<string>,
  crossing: readonly Entry[],
  blocked: readonly Blocked[] = [],
  known: readonly Vec3[] = [],
): Move | undefined {
  const axes = distinct(
    crossing.map((entry) => (first.has(entry.owner) ? entry.axis : scale(entry.axis, -1))),
  );
  const means = axes.flatMap((one, i) => axes.slice(i + 1).map((other) => add(one, other)));
  const sum = axes.reduce((total, axis) => add(total, axis), [0, 0, 0] as Vec3);
  const between = [...means, sum].filter((d) => length(d) > SAME_POINT).map(unit);
  const directions = distinct([...axes, ...between, ...known]);
  const moves = directions
    .filter((direction) => !blocked.some((block) => stops(block, first, second, direction)))
    .map((direction) => moveAlong(first, crossing, direction));
  return moves.reduce<Move | undefined>(
    (best, move) => (best === undefined || better(move, best) ? move : best),
    undefined,
  );
}

/**
 * Two groups and their best move; the smaller travels, of two equal ones the one that receives the tenons.
 *
 * @param direction a travel of the first group that closes them
 */
export function joined(
  one: readonly string[],
  other: readonly string[],
  crossing: readonly Entry[],
  blocked: readonly Blocked[],
  direction: Vec3,
): OrderStep {
  const first = new Set(one);
  const owned = crossing.filter(({ owner }) => first.has(owner)).length;
  const oneMoves = one.length < other.length || (one.length === other.length && owned * 2 < crossing.length);
  const [moving, still] = oneMoves ? [one, other] : [other, one];
  const known = oneMoves ? direction : scale(direction, -1);
  return { moving, still, move: bestMove(new Set(moving), new Set(still), crossing, blocked, [known])! };
}

function moveAlong(first: ReadonlySet<string>, crossing: readonly Entry[], direction: Vec3): Move {
  const against = scale(direction, -1);
  const entries = crossing.map((entry) => freedomOf(entry, first.has(entry.owner) ? direction : against));
  const worst = entries.reduce<Freedom>(
    (most, { freedom }) => (RANK[freedom] > RANK[most] ? freedom : most),
    'free',
  );
  const longest = Math.max(
    ...crossing.map((entry, i) =>
      entry.inGroove
        ? wayInGroove({ ...entry, inGroove: entry.inGroove }, direction)
        : entry.engaged / Math.cos((entries[i]!.leanDeg * Math.PI) / 180),
    ),
  );
  return {
    direction,
    entries,
    freedom: worst,
    excess: entries.reduce((total, { excess }) => total + excess, 0),
    distance: longest + PRACTICE.startAir,
  };
}

const better = (move: Move, best: Move): boolean =>
  RANK[move.freedom] < RANK[best.freedom] ||
  (move.freedom === best.freedom && move.excess < best.excess - SAME_POINT);

/** Boards in the way along a direction are in the way whichever of the two moves. */
function stops(
  block: Blocked,
  first: ReadonlySet<string>,
  second: ReadonlySet<string>,
  direction: Vec3,
): boolean {
  const same = first.has(block.moving) && second.has(block.still);
  const turned = second.has(block.moving) && first.has(block.still);
  if (!same && !turned) return false;
  return oneWay(same ? direction : scale(direction, -1), block.direction);
}

import { type Pocket, pocketGap, reachAlong } from '../board/index.js';
import { add, dot, scale, subtract } from '../frame/index.js';
import { NOISE } from '../tolerances.js';
import type { Span } from './clear-span.js';
import type { Give, Laid } from './layout.js';
import { keptBetween } from './meetings.js';
import { PRACTICE } from './practice.js';

/** Shifts across are given to this, mm. */
const SHIFT_STEP = 0.5;

/** A shift across, away from what is too near: its part of what is missing, when its own walls allow it. */
export function aside(
  laid: Laid,
  own: readonly Pocket[],
  others: readonly Pocket[],
  among: 1 | 2,
): Partial<Give> | undefined {
  const { draft, walls, rowsAt } = laid;
  if (draft.options.shiftAcross !== undefined || !walls) return undefined;
  const { y } = draft.seat;
  const worst = own
    .flatMap((p) => others.map((q) => ({ p, q, missing: keptBetween(laid, p, laid, q) - pocketGap(p, q) })))
    .reduce((most, next) => (next.missing > most.missing ? next : most));
  const away = dot(subtract(deepMiddle(worst.p), deepMiddle(worst.q)), y);
  if (Math.abs(away) < SHIFT_STEP) return undefined;
  const shift = Math.sign(away) * Math.ceil(worst.missing / among / SHIFT_STEP - 1e-3) * SHIFT_STEP;
  const half = (draft.cutter * draft.lean.across) / 2;
  const [first, last] = [rowsAt[0]! + shift - half, rowsAt.at(-1)! + shift + half];
  if (first - walls.from < PRACTICE.wall || walls.to - last < PRACTICE.wall) return undefined;
  return { across: shift };
}

const deepMiddle = ({ at, depth }: Pocket) => add(at.origin, scale(at.z, -depth / 2));

/** The longest part of a joint's room that lies clear of others, seen along its row. */
export function roomBeside(
  laid: Laid,
  own: readonly Pocket[],
  other: Laid | undefined,
  others: readonly Pocket[],
): Partial<Give> | undefined {
  const { seat, options } = laid.draft;
  if (options.places !== undefined || options.shiftAlong !== undefined) return undefined;
  const base = dot(seat.origin, seat.x);
  const [first] = own;
  // the row as one cut from end to end: what comes near it anywhere is in its way
  const middle = (laid.room.from + laid.room.to) / 2 - (dot(first!.at.origin, seat.x) - base);
  const whole: Pocket = {
    ...first!,
    at: { ...first!.at, origin: add(first!.at.origin, scale(seat.x, middle)) },
    length: Math.max(laid.room.to - laid.room.from, first!.length),
  };
  const spans = others
    .filter((q) => pocketGap(whole, q) < keptBetween(laid, whole, other, q))
    .map((q) => {
      const kept = own.reduce((most, p) => Math.max(most, keptBetween(laid, p, other, q)), 0);
      const [from, to] = reachAlong(q, seat.x);
      return { from: from - base - kept, to: to - base + kept };
    })
    .toSorted((p, q) => p.from - q.from);
  let best: Span | undefined;
  let from = laid.room.from;
  for (const span of [...spans, { from: laid.room.to, to: laid.room.to }]) {
    const to = Math.min(span.from, laid.room.to);
    if (to > from && (!best || to - from > best.to - best.from + 1e-3)) best = { from, to };
    from = Math.max(from, span.to);
  }
  return best && { room: best };
}

/** Two rows end to end: each keeps to its side of the middle between them. */
export function sharedRoom(
  one: Laid,
  ofOne: readonly Pocket[],
  other: Laid,
  ofOther: readonly Pocket[],
): readonly [Partial<Give>, Partial<Give>] | undefined {
  const way = sameWay(one, other);
  if (way === 0) return undefined;
  const { x } = one.draft.seat;
  const [p, q] = [reach(ofOne, x), reach(ofOther, x)];
  const oneIsLow = p.from + p.to < q.from + q.to;
  const [low, high] = oneIsLow ? [p, q] : [q, p];
  // rows that lie over each other are no neighbours: half a shelf without tenons is no way out
  const overlap = low.to - high.from;
  if (overlap > Math.min(low.to - low.from, high.to - high.from) / 3) return undefined;
  const middle = (low.to + high.from) / 2;
  const half = keptBetween(one, ofOne[0]!, other, ofOther[0]!) / 2;
  const kept = (laid: Laid, isLow: boolean): Partial<Give> => {
    const sense = laid === one ? 1 : way;
    const base = dot(laid.draft.seat.origin, x);
    const limit = sense * (middle + (isLow ? -half : half) - base);
    // the seat of the other may run the other way
    const below = isLow === sense > 0;
    return {
      room: below
        ? { from: Number.NEGATIVE_INFINITY, to: limit }
        : { from: limit, to: Number.POSITIVE_INFINITY },
    };
  };
  return [kept(one, oneIsLow), kept(other, !oneIsLow)];
}

/** Two rows over one stretch: every second place is the other's. */
export function staggered(one: Laid, other: Laid): readonly [Partial<Give>, Partial<Give>] | undefined {
  const way = sameWay(one, other);
  const set = ({ draft: { options }, give }: Laid) =>
    options.places !== undefined ||
    options.spacing !== undefined ||
    options.shiftAlong !== undefined ||
    give.turn !== undefined;
  if (way === 0 || set(one) || set(other)) return undefined;
  const { x } = one.draft.seat;
  const off = dot(subtract(other.draft.seat.origin, one.draft.seat.origin), x);
  const ends = [other.room.from, other.room.to].map((end) => off + way * end).toSorted((p, q) => p - q);
  const room = { from: Math.max(one.room.from, ends[0]!), to: Math.min(one.room.to, ends[1]!) };
  if (!(room.to > room.from)) return undefined;
  const turned = [room.from, room.to].map((end) => way * (end - off)).toSorted((p, q) => p - q);
  return [
    { room, turn: 0 },
    { room: { from: turned[0]!, to: turned[1]! }, turn: way > 0 ? 1 : 0 },
  ];
}

/** 1 when two rows run the same way, -1 the opposite way, 0 when they do not run alike. */
function sameWay(one: Laid, other: Laid): 1 | 0 | -1 {
  const along = dot(one.draft.seat.x, other.draft.seat.x);
  return Math.abs(along) < 1 - NOISE ? 0 : along > 0 ? 1 : -1;
}

const reach = (pockets: readonly Pocket[], way: Laid['draft']['seat']['x']): Span => {
  const ends = pockets.map((pocket) => reachAlong(pocket, way));
  return { from: Math.min(...ends.map(([from]) => from)), to: Math.max(...ends.map(([, to]) => to)) };
};

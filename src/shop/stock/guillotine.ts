import { SAME_POINT } from '../../tolerances.js';
import { cutOrder } from './cut-order.js';
import type {
  CuttingPlan,
  Direction,
  LaidPart,
  LaidStock,
  PartToCut,
  Rect,
  Sawing,
  Stock,
  Unplaced,
} from './cutting.js';
import { cutPart, freePiece, type Piece, trimmedPiece } from './guillotine-tree.js';
import { cutsTooShort } from './saw-limits.js';

/**
 * Lays parts out so that every cut runs from edge to edge of the piece it is made on.
 *
 * Several ways of sorting, choosing and splitting are tried, each a first-fit with the best-fitting free piece (Jylänki, A
 * Thousand Ways to Pack the Bin, 2010, section 2: the guillotine algorithms); the one that places most, then takes least
 * stock, then makes the fewest cuts on pieces too short for the saw, then makes the preferred cuts first, then keeps the largest offcut, is taken. The same input gives the same plan.
 * It is not proved to be the least possible stock.
 */
export function guillotine(
  parts: readonly PartToCut[],
  stocks: readonly Stock[],
  given: Sawing,
): CuttingPlan {
  const sawing = { ...given, trim: trimOf(given) };
  const splits = sawing.first === 'rip' ? SPLITS : [SPLITS[2]!, SPLITS[3]!, SPLITS[1]!, SPLITS[0]!];
  const partOrders = distinct(SORTS.map((sort) => parts.toSorted(sort)));
  const stockOrders = distinct(
    [1, -1].map((sense) => stocks.toSorted((a, b) => sense * (a.length * a.width - b.length * b.width))),
  );
  const tries = splits.flatMap((split, way) =>
    partOrders.flatMap((ordered) =>
      stockOrders.map((stock) => {
        const plan = laidOut(ordered, stock, sawing, split);
        return { plan, merit: meritOf(plan, way, sawing.shortest ?? 0) };
      }),
    ),
  );
  // among equals the earlier way stands
  return tries.reduce((a, b) => (firstDifference(b.merit, a.merit) < 0 ? b : a)).plan;
}

/** Orders without those that do not differ: few sizes are sorted alike in every way, and give the same plan. */
const distinct = <T>(orders: readonly (readonly T[])[]): readonly (readonly T[])[] =>
  orders.filter((order, i) => orders.findIndex((other) => other.every((one, at) => one === order[at])) === i);

/** A saw takes no less than its kerf off. */
const trimOf = ({ kerf, trim }: Sawing): Sawing['trim'] => {
  const least = (size: number) => (size > 0 ? Math.max(size, kerf) : 0);
  return { ends: least(trim.ends), edges: least(trim.edges) };
};

/** Which cut goes across the whole free piece when a part is taken from it. */
type Split = (piece: Rect, part: Rect, ofSheet: boolean) => Direction;

const SPLITS: readonly Split[] = [
  // full-length strips first, then each strip to length, then each piece to width
  (_piece, _part, ofSheet) => (ofSheet ? 'rip' : 'crosscut'),
  () => 'rip',
  () => 'crosscut',
  (piece, part) => (piece.length - part.length < piece.width - part.width ? 'rip' : 'crosscut'),
];

type Sort = (a: PartToCut, b: PartToCut) => number;

const SORTS: readonly Sort[] = [
  (a, b) => b.width - a.width || b.length - a.length,
  (a, b) => b.length * b.width - a.length * a.width || b.length - a.length,
  (a, b) => b.length - a.length || b.width - a.width,
];

interface Open {
  readonly stock: Stock;
  readonly whole: Piece;
  readonly usable: Rect;
  free: readonly Piece[];
}

function laidOut(
  parts: readonly PartToCut[],
  stocks: readonly Stock[],
  sawing: Sawing,
  split: Split,
): CuttingPlan {
  const open: Open[] = [];
  const unplaced: Unplaced[] = [];
  for (const part of parts) {
    if (place(part, open, sawing, split)) continue;
    const stock = stocks.find((one) => takes(one, part, sawing) && !usedUp(one, open));
    if (stock) {
      const whole = freePiece({ x: 0, y: 0, length: stock.length, width: stock.width });
      const usable = trimmedPiece(whole, sawing)!;
      open.push({ stock, whole, usable: usable.rect, free: [usable] });
      place(part, open, sawing, split);
    } else {
      const { ends, edges } = sawing.trim;
      unplaced.push({
        part,
        because: stocks.some((one) => takes(one, part, sawing)) ? 'used up' : 'too small',
        needed: { length: part.length + 2 * ends, width: part.width + 2 * edges },
      });
    }
  }
  return {
    pieces: open.map(
      ({ stock, whole, usable }): LaidStock => ({ stock, usable, ...cutOrder(whole, sawing.first) }),
    ),
    unplaced,
  };
}

const usedUp = (stock: Stock, open: readonly Open[]): boolean =>
  stock.count !== undefined && open.filter((one) => one.stock === stock).length >= stock.count;

const takes = (stock: Stock, part: PartToCut, { trim }: Sawing): boolean =>
  lies(part).some(
    (size) =>
      size.length <= stock.length - 2 * trim.ends + SAME_POINT &&
      size.width <= stock.width - 2 * trim.edges + SAME_POINT,
  );

/** The ways a part may lie, its own first. */
const lies = (part: PartToCut): readonly { length: number; width: number; turned: boolean }[] => [
  { length: part.length, width: part.width, turned: false },
  ...(part.grain === 'free' && part.length !== part.width
    ? [{ length: part.width, width: part.length, turned: true }]
    : []),
];

/** Puts a part on the free piece it fills best. @returns whether one had room */
function place(part: PartToCut, open: readonly Open[], { kerf }: Sawing, split: Split): boolean {
  let best: { on: Open; piece: Piece; laid: LaidPart; left: number } | undefined;
  for (const on of open) {
    for (const piece of on.free) {
      const { x, y, length, width } = piece.rect;
      for (const lie of lies(part)) {
        const spare = Math.min(length - lie.length, width - lie.width);
        if (spare < -SAME_POINT) continue;
        const left = length * width - lie.length * lie.width;
        if (!best || left < best.left - SAME_POINT)
          best = { on, piece, laid: { id: part.id, x, y, ...lie }, left };
      }
    }
  }
  if (!best) return false;
  const { on, piece, laid } = best;
  const ofSheet = Math.abs(piece.rect.length - on.usable.length) < SAME_POINT;
  const left = cutPart(piece, laid, split(piece.rect, laid, ofSheet), kerf);
  on.free = [...on.free.filter((one) => one !== piece), ...left];
  return true;
}

/** Smaller is better, the first figure first. */
function meritOf(plan: CuttingPlan, way: number, shortest: number): readonly number[] {
  const { pieces, unplaced } = plan;
  const stockArea = pieces.reduce((sum, { stock }) => sum + stock.length * stock.width, 0);
  const largest = Math.max(
    0,
    ...pieces.flatMap(({ offcuts }) => offcuts.map(({ length, width }) => length * width)),
  );
  return [
    unplaced.length,
    cutsTooShort(plan, shortest).length,
    stockArea,
    pieces.length,
    way,
    -Math.round(largest),
  ];
}

const firstDifference = (a: readonly number[], b: readonly number[]): number => {
  const at = a.findIndex((figure, i) => figure !== b[i]);
  return at < 0 ? 0 : a[at]! - b[at]!;
};

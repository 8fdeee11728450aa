import { markOf } from '../words/index.js';
import type { Cut, Direction, LaidPart, Outcome, Rect } from './cutting.js';
import type { Piece } from './guillotine-tree.js';

/** The cuts of one piece of stock in the order they are made, and what they leave. */
export interface CutOrder {
  readonly cuts: readonly Cut[];
  readonly parts: readonly LaidPart[];
  readonly offcuts: readonly (Rect & { readonly id: string })[];
}

/**
 * Numbers the cuts of a piece of stock: of all pieces that wait for a cut, those of the preferred direction first, the
 * largest first. A piece is cut only when an earlier cut has set it free, so the order can be followed at the saw.
 */
export function cutOrder(stock: Piece, first: Direction): CutOrder {
  const all = everyPiece(stock);
  const free = all
    .filter((piece) => piece.use.kind === 'free')
    .toSorted((a, b) => areaOf(b.rect) - areaOf(a.rect));
  const offcuts = new Map(free.map((piece, i) => [piece, { ...piece.rect, id: markOf('offcut', i) }]));
  const outcome = (piece: Piece | undefined): Outcome => {
    if (!piece) return { kind: 'nothing' };
    const { use, rect } = piece;
    if (use.kind === 'part') return { kind: 'part', id: use.part.id };
    if (use.kind === 'trimming') return { kind: 'trimming' };
    if (use.kind === 'cut') return { kind: 'piece', rect };
    return { kind: 'offcut', id: offcuts.get(piece)!.id, rect };
  };

  const cuts: Cut[] = [];
  const waiting = [stock];
  for (let i = next(waiting, first); i >= 0; i = next(waiting, first)) {
    const piece = waiting.splice(i, 1)[0]!;
    if (piece.use.kind !== 'cut') break;
    const { direction, at, near, far } = piece.use;
    cuts.push({
      number: cuts.length + 1,
      piece: piece.rect,
      direction,
      at,
      near: outcome(near),
      far: outcome(far),
    });
    for (const side of [near, far]) if (side) waiting.push(side);
  }
  return {
    cuts,
    parts: all.flatMap(({ use }) => (use.kind === 'part' ? [use.part] : [])),
    offcuts: [...offcuts.values()],
  };
}

/** Place in the list of the piece to cut next; -1 when none waits. */
function next(waiting: readonly Piece[], first: Direction): number {
  const cuttable = waiting.filter(({ use }) => use.kind === 'cut');
  const preferred = cuttable.filter(({ use }) => use.kind === 'cut' && use.direction === first);
  const chosen = (preferred.length > 0 ? preferred : cuttable).reduce<Piece | undefined>(
    (best, piece) => (best && areaOf(best.rect) >= areaOf(piece.rect) ? best : piece),
    undefined,
  );
  return chosen ? waiting.indexOf(chosen) : -1;
}

function everyPiece(piece: Piece): readonly Piece[] {
  if (piece.use.kind !== 'cut') return [piece];
  const { near, far } = piece.use;
  return [piece, ...(near ? everyPiece(near) : []), ...(far ? everyPiece(far) : [])];
}

const areaOf = ({ length, width }: Rect): number => length * width;

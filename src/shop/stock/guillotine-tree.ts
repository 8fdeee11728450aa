import { SAME_POINT } from '../../tolerances.js';
import type { Direction, LaidPart, Rect, Sawing } from './cutting.js';

/** A piece of stock and what becomes of it: cut in two, a part, trimmings, or still free. */
export interface Piece {
  readonly rect: Rect;
  use: Use;
}

export type Use =
  | { readonly kind: 'free' }
  | { readonly kind: 'trimming' }
  | { readonly kind: 'part'; readonly part: LaidPart }
  | {
      readonly kind: 'cut';
      readonly direction: Direction;
      readonly at: number;
      readonly near: Piece | undefined;
      readonly far: Piece | undefined;
    };

/** A piece nothing is cut from yet. */
export const freePiece = (rect: Rect): Piece => ({ rect, use: { kind: 'free' } });

/**
 * Cuts a piece in two from edge to edge.
 *
 * @param at size of the near piece, mm; 0 takes only the kerf off
 * @returns the two sides; a side the kerf takes whole is missing
 */
export function cutInTwo(
  piece: Piece,
  direction: Direction,
  at: number,
  kerf: number,
): { near: Piece | undefined; far: Piece | undefined } {
  const { x, y, length, width } = piece.rect;
  const [nearRect, farRect]: [Rect, Rect] =
    direction === 'rip'
      ? [
          { x, y, length, width: at },
          { x, y: y + at + kerf, length, width: width - at - kerf },
        ]
      : [
          { x, y, length: at, width },
          { x: x + at + kerf, y, length: length - at - kerf, width },
        ];
  const near = isWood(nearRect) ? freePiece(nearRect) : undefined;
  const far = isWood(farRect) ? freePiece(farRect) : undefined;
  piece.use = { kind: 'cut', direction, at, near, far };
  return { near, far };
}

const isWood = ({ length, width }: Rect): boolean => length > SAME_POINT && width > SAME_POINT;

type Trim = readonly [direction: Direction, size: number, side: 'near' | 'far'];

/** Trims the edges and ends of a piece of stock; returns what parts may be cut from. */
export function trimmedPiece(stock: Piece, { kerf, trim, first }: Sawing): Piece | undefined {
  const edges: readonly Trim[] = [
    ['rip', trim.edges, 'near'],
    ['rip', trim.edges, 'far'],
  ];
  const ends: readonly Trim[] = [
    ['crosscut', trim.ends, 'near'],
    ['crosscut', trim.ends, 'far'],
  ];
  const steps = first === 'rip' ? [...edges, ...ends] : [...ends, ...edges];
  let piece: Piece | undefined = stock;
  for (const [direction, size, side] of steps) {
    if (size <= 0 || !piece) continue;
    const whole: number = direction === 'rip' ? piece.rect.width : piece.rect.length;
    const { near, far }: ReturnType<typeof cutInTwo> = cutInTwo(
      piece,
      direction,
      side === 'near' ? Math.max(size - kerf, 0) : Math.max(whole - size, 0),
      kerf,
    );
    const off = side === 'near' ? near : far;
    if (off) off.use = { kind: 'trimming' };
    piece = side === 'near' ? far : near;
  }
  return piece;
}

/**
 * Cuts a part out of the reference corner of a free piece.
 *
 * @param first the cut across the whole piece; the other one is made on the part's own strip
 * @returns the free pieces that are left
 */
export function cutPart(piece: Piece, part: LaidPart, first: Direction, kerf: number): readonly Piece[] {
  const left: Piece[] = [];
  let at: Piece = piece;
  for (const direction of first === 'rip' ? RIP_FIRST : CROSSCUT_FIRST) {
    const size = direction === 'rip' ? part.width : part.length;
    const whole = direction === 'rip' ? at.rect.width : at.rect.length;
    if (whole - size <= SAME_POINT) continue;
    const { near, far } = cutInTwo(at, direction, size, kerf);
    if (far) left.push(far);
    at = near!;
  }
  at.use = { kind: 'part', part };
  return left;
}

const RIP_FIRST: readonly Direction[] = ['rip', 'crosscut'];
const CROSSCUT_FIRST: readonly Direction[] = ['crosscut', 'rip'];

import { SAME_POINT } from '../../tolerances.js';
import type { Shop } from '../at-hand/index.js';
import { STOCK_PRACTICE } from '../practice/index.js';
import type { Cut, CuttingPlan } from './cutting.js';

/** Shortest piece each machine may be given, mm; common practice where the shop file does not say. */
export interface ShortestPiece {
  readonly saw: number;
  readonly planer: number;
}

/** What the shop file says of short pieces, and the usual 300 mm where it says nothing. */
export const shortestPiece = ({ shortest }: Shop): ShortestPiece => ({
  saw: shortest.saw ?? STOCK_PRACTICE.stripLength,
  planer: shortest.planer ?? STOCK_PRACTICE.stripLength,
});

/**
 * Whether a cut may be made on the saw: a rip runs along at least the shortest piece the saw may be given; a crosscut is made
 * on a piece that is as long as that in one direction, held against the mitre gauge by the longer side.
 */
const withinSawLimit = ({ piece, direction }: Pick<Cut, 'piece' | 'direction'>, shortest: number) =>
  (direction === 'rip' ? piece.length : Math.max(piece.length, piece.width)) >= shortest - SAME_POINT;

/** The cuts of a plan that the saw may not make, as `piece of stock (from 1), cut`. */
export const cutsTooShort = (
  plan: CuttingPlan,
  shortest: number,
): readonly { readonly stock: number; readonly cut: Cut }[] =>
  plan.pieces.flatMap(({ cuts }, i) =>
    cuts.filter((cut) => !withinSawLimit(cut, shortest)).map((cut) => ({ stock: i + 1, cut })),
  );

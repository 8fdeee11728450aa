import { markOf } from '../words/index.js';
import type { Cut, LaidStock, Outcome } from './cutting.js';
import type { StockLayout } from './sheet-layout.js';

/** Layouts whose offcuts are counted through all of them, in the order they are met: no two pieces of wood share a name. */
export function numberedOffcuts(layouts: readonly StockLayout[]): readonly StockLayout[] {
  let count = 0;
  const named = (piece: LaidStock): LaidStock => {
    const names = new Map(piece.offcuts.map(({ id }) => [id, markOf('offcut', count++)]));
    const outcome = (one: Outcome): Outcome =>
      one.kind === 'offcut' ? { ...one, id: names.get(one.id)! } : one;
    return {
      ...piece,
      offcuts: piece.offcuts.map((one) => ({ ...one, id: names.get(one.id)! })),
      cuts: piece.cuts.map((cut): Cut => ({ ...cut, near: outcome(cut.near), far: outcome(cut.far) })),
    };
  };
  return layouts.map((layout) => ({
    ...layout,
    plan: { ...layout.plan, pieces: layout.plan.pieces.map(named) },
  }));
}

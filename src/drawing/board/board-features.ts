import type { Bevel, Board, Groove, Hole, Mortise, Slot } from '../../board/index.js';
import { markOf } from '../../shop/index.js';

/** A feature with the mark it carries on drawings and templates alike: `M1`, `H1`, `L1`, `U1`, `B1` (`MARK_LETTERS`), in the order of the board's data. */
export type MarkedFeature =
  | { readonly mark: string; readonly kind: 'mortise'; readonly of: Mortise }
  | { readonly mark: string; readonly kind: 'hole'; readonly of: Hole }
  | { readonly mark: string; readonly kind: 'slot'; readonly of: Slot }
  | { readonly mark: string; readonly kind: 'groove'; readonly of: Groove }
  | { readonly mark: string; readonly kind: 'bevel'; readonly of: Bevel };

export const markedFeatures = (board: Board): readonly MarkedFeature[] => [
  ...board.mortises.map((of, i) => ({ mark: markOf('mortise', i), kind: 'mortise' as const, of })),
  ...board.holes.map((of, i) => ({ mark: markOf('hole', i), kind: 'hole' as const, of })),
  ...board.slots.map((of, i) => ({ mark: markOf('slot', i), kind: 'slot' as const, of })),
  ...board.grooves.map((of, i) => ({ mark: markOf('groove', i), kind: 'groove' as const, of })),
  ...board.bevels.map((of, i) => ({ mark: markOf('bevel', i), kind: 'bevel' as const, of })),
];

/**
 * The letter of each kind of mark, on every paper, plan and template: a number follows it, and no two kinds share one. A board's
 * mark has two letters or more, so it is never taken for one of these; R is left for radii, as on any drawing.
 */
export const MARK_LETTERS = {
  bevel: 'B',
  clamp: 'C',
  'guide edge': 'E',
  fastening: 'F',
  'glue-up step': 'G',
  hole: 'H',
  'seam cross': 'J',
  'groove card': 'K',
  slot: 'L',
  mortise: 'M',
  'found length': 'O',
  'bought length': 'P',
  card: 'S',
  tenon: 'T',
  groove: 'U',
  'test blank': 'X',
  offcut: 'Z',
} as const;

export type MarkedKind = keyof typeof MARK_LETTERS;

/**
 * The mark of one of its kind.
 *
 * @param index from 0
 * @example markOf('mortise', 0) // 'M1'
 */
export const markOf = (kind: MarkedKind, index: number): string => `${MARK_LETTERS[kind]}${index + 1}`;

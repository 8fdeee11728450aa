import type { Say } from '../../length/index.js';
import type { Cut, Outcome, Rect } from '../../shop/index.js';

/** What the papers of a layout are told. */
export interface LayoutPaper {
  readonly say: Say;
  /** Of the design, on every sheet. */
  readonly revision: string;
}

/** `269.0 mm × 161.0 mm` */
export const sizeWords = ({ length, width }: Pick<Rect, 'length' | 'width'>, say: Say): string =>
  `${say.length(length)} × ${say.length(width)}`;

/** One cut as it is read at the saw: `5 rip at 161.0 mm: P | offcut Z1 2420.0 mm × 1035.8 mm`. */
export const cutLine = ({ number, direction, at, near, far }: Cut, say: Say): string =>
  near.kind === 'nothing'
    ? `${number}  ${direction} one kerf off the near side: ${outcomeWords(far, say)}`
    : `${number}  ${direction} at ${say.length(at)}: ${outcomeWords(near, say)} | ${outcomeWords(far, say)}`;

function outcomeWords(outcome: Outcome, say: Say): string {
  switch (outcome.kind) {
    case 'part':
      return `part ${outcome.id}`;
    case 'piece':
      return `piece ${sizeWords(outcome.rect, say)}`;
    case 'offcut':
      return `offcut ${outcome.id} ${sizeWords(outcome.rect, say)}`;
    case 'trimming':
      return 'trimming';
    case 'nothing':
      return 'nothing, the kerf takes it';
  }
}

/** Where a cut's saw line begins and ends, from the stock's reference corner, mm: the wood it takes away. */
export function kerfRect({ piece, direction, at }: Cut, kerf: number): Rect {
  return direction === 'rip'
    ? {
        x: piece.x,
        y: piece.y + at,
        length: piece.length,
        width: Math.min(kerf, piece.width - at),
      }
    : {
        x: piece.x + at,
        y: piece.y,
        length: Math.min(kerf, piece.length - at),
        width: piece.width,
      };
}

import type { Design } from '../../src/assembly/index.js';
import { angleDeg, dot, subtract } from '../../src/frame/index.js';
import type { CardCut, SetupCard } from '../../src/shop/index.js';
import { readCard } from './card-reader.js';

interface Carded {
  readonly design: Design;
  readonly cards: readonly SetupCard[];
}

/** A turned mortise is set by its guide's marks, and by its centre line alone: both must lead to it. */
const waysToSet = (cut: CardCut): readonly CardCut[] =>
  cut.marked?.guideEdge ? [cut, { ...cut, marked: { ...cut.marked, guideEdge: undefined } }] : [cut];

/** How far every mortise of a design is off when it is cut by its card: mm along, across, out, and degrees. */
export function off({ design, cards }: Carded, rounded = 0) {
  return cards.flatMap((card) =>
    card.cuts.flatMap(waysToSet).map((cut) => {
      const { board } = design.boards.find((placed) => placed.board.id === cut.board)!;
      const { at, ...mortise } = board.mortises.find(({ id }) => id === cut.mortise)!;
      const read = readCard(card, cut, board, rounded);
      const by = subtract(read.centre, at.origin);
      const lean = angleDeg(read.along, at.x);
      return {
        where: `${card.id} ${cut.board} ${cut.mortise}`,
        along: Math.abs(dot(by, at.x)),
        across: Math.abs(dot(by, at.y)),
        out: Math.abs(dot(by, at.z)),
        degrees: Math.max(angleDeg(read.out, at.z), Math.min(lean, 180 - lean)),
        sizes: Math.max(
          Math.abs(read.width - mortise.width),
          Math.abs(read.length - mortise.length),
          Math.abs(read.depth - mortise.depth),
        ),
      };
    }),
  );
}

export const worst = (rows: ReturnType<typeof off>) =>
  Math.max(...rows.flatMap(({ along, across, out, degrees, sizes }) => [along, across, out, degrees, sizes]));

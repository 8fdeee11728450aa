import type { Board } from '../../board/index.js';
import { COPLANAR } from '../../tolerances.js';
import type { Shop } from '../at-hand/index.js';
import { STOCK_PRACTICE } from '../practice/index.js';
import type { CardCut, SetupCard } from './setup-card.js';

/** Scraps of one section, for the test cuts of the set-ups named. Lengths mm. */
export interface TestBlank {
  readonly material: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** One for each set-up, two where a wedge holds the work at an angle. */
  readonly count: number;
  readonly setups: readonly string[];
}

/**
 * The test blanks of a set of cards: one for each section a set-up is used on, sections of all cards together.
 *
 * As thick as the board; as wide only where a rail bears on its edges, else the mortise finds room in less of it, and no wide
 * board need be glued up for a test.
 */
export function testBlanks(
  cards: readonly SetupCard[],
  boards: readonly Board[],
  shop: Shop,
): readonly TestBlank[] {
  const byId = new Map(boards.map((board) => [board.id, board]));
  const wanted = cards.flatMap((card) => {
    const sections: TestBlank[] = [];
    for (const cut of card.cuts) {
      const board = byId.get(cut.board);
      if (!board) continue;
      const { width, thickness } = board.blank;
      const blank: TestBlank = {
        material: board.material,
        width: widthIsHeld(cut)
          ? width
          : Math.min(width, card.mortiseLength + STOCK_PRACTICE.testBlankBeside),
        thickness,
        length: Math.max(
          STOCK_PRACTICE.stripLength,
          shop.shortest.saw ?? 0,
          card.mortiseLength + STOCK_PRACTICE.testBlankBeyond,
        ),
        count: card.nearRail?.wedge || card.farRail?.wedge ? 2 : 1,
        setups: [card.id],
      };
      if (!sections.some((one) => oneSection(one, blank))) sections.push(blank);
    }
    return sections;
  });
  const merged: TestBlank[] = [];
  for (const blank of wanted) {
    const at = merged.findIndex((one) => oneSection(one, blank));
    if (at < 0) merged.push(blank);
    else {
      const one = merged[at]!;
      merged[at] = {
        ...one,
        length: Math.max(one.length, blank.length),
        count: one.count + blank.count,
        setups: [...one.setups, ...blank.setups],
      };
    }
  }
  return merged;
}

const WIDE_FACES: readonly string[] = ['reference-face', 'opposite-face'];

const widthIsHeld = ({ nearFace, farFace }: CardCut): boolean =>
  [nearFace, farFace].some((face) => face !== undefined && !WIDE_FACES.includes(face));

const oneSection = (a: TestBlank, b: TestBlank): boolean =>
  a.material === b.material &&
  Math.abs(a.width - b.width) < COPLANAR &&
  Math.abs(a.thickness - b.thickness) < COPLANAR;

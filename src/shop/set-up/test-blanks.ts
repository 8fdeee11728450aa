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
  /** As many as take all the test cuts side by side. */
  readonly count: number;
  /** One for each set-up, two where a wedge holds the work at an angle. */
  readonly cuts: number;
  readonly setups: readonly string[];
  /** What is sawn out of square before the test cut of a set-up that uses a wedge. */
  readonly sawn: readonly { readonly setup: string; readonly like: readonly string[] }[];
}

/** A test cut and the length of blank it takes. */
interface Wanted extends Omit<TestBlank, 'count' | 'cuts' | 'length' | 'setups' | 'sawn'> {
  readonly lengths: readonly number[];
  readonly setup: string;
  readonly like: readonly string[];
}

/**
 * The test blanks of a set of cards: each serves every set-up used on its section, the test cuts one after the other along it.
 *
 * As thick as the board; as wide only where a rail bears on its edges, else the mortise finds room in less of it. Never shorter
 * than the saw may be given, never longer than is handy.
 */
export function testBlanks(
  cards: readonly SetupCard[],
  boards: readonly Board[],
  shop: Shop,
): readonly TestBlank[] {
  const byId = new Map(boards.map((board) => [board.id, board]));
  const sections: Wanted[][] = [];
  for (const card of cards) {
    for (const cut of card.cuts) {
      const board = byId.get(cut.board);
      if (!board) continue;
      const wanted = wantedBy(card, cut, board);
      const same = sections.find(([first]) => oneSection(first!, wanted));
      if (!same) sections.push([wanted]);
      else if (!same.some(({ setup }) => setup === card.id)) same.push(wanted);
    }
  }
  return sections.map((section) => blankOf(section, shop));
}

function wantedBy(card: SetupCard, cut: CardCut, { material, blank }: Board): Wanted {
  const { width, thickness } = blank;
  const length = card.mortiseLength + STOCK_PRACTICE.testBlankBeside;
  return {
    material,
    width: widthIsHeld(cut) ? width : Math.min(width, length),
    thickness,
    lengths: card.nearRail?.wedge || card.farRail?.wedge ? [length, length] : [length],
    setup: card.id,
    like: card.testCut.sawnFirst,
  };
}

function blankOf(section: readonly Wanted[], shop: Shop): TestBlank {
  const { material, width, thickness } = section[0]!;
  const cuts = section.flatMap(({ lengths }) => lengths);
  const least = Math.max(STOCK_PRACTICE.stripLength, shop.shortest.saw ?? 0);
  const room = Math.max(least, STOCK_PRACTICE.stripLongest) - STOCK_PRACTICE.testBlankBeside;
  const rows: number[] = [];
  for (const cut of cuts.toSorted((a, b) => b - a)) {
    const at = rows.findIndex((used) => used + cut <= room);
    if (at < 0) rows.push(cut);
    else rows[at] = rows[at]! + cut;
  }
  return {
    material,
    width,
    thickness,
    length: Math.max(least, Math.max(...rows) + STOCK_PRACTICE.testBlankBeside),
    count: rows.length,
    cuts: cuts.length,
    setups: section.map(({ setup }) => setup),
    sawn: section.filter(({ like }) => like.length > 0).map(({ setup, like }) => ({ setup, like })),
  };
}

const WIDE_FACES: readonly string[] = ['reference-face', 'opposite-face'];

const widthIsHeld = ({ nearFace, farFace }: CardCut): boolean =>
  [nearFace, farFace].some((face) => face !== undefined && !WIDE_FACES.includes(face));

type Section = Pick<TestBlank, 'material' | 'width' | 'thickness'>;

const oneSection = (a: Section, b: Section): boolean =>
  a.material === b.material &&
  Math.abs(a.width - b.width) < COPLANAR &&
  Math.abs(a.thickness - b.thickness) < COPLANAR;

import type { ShopPapers } from '../../shop/index.js';

/** Paths of a board's own files. */
export interface BoardFiles {
  readonly solid?: string;
  readonly template?: string;
}

/** The papers of the bench as `summary.json` holds them: the same data, boards by their ids. */
export interface PapersSummary {
  readonly shop: string;
  /** Everything the shop file gave, lengths mm. */
  readonly atHand: ShopPapers['shop'];
  readonly aids: readonly {
    readonly id: string;
    readonly kind: string;
    readonly purpose: string;
    readonly count: number;
    readonly handed: boolean;
    readonly solid: string | null;
    readonly template: string | null;
  }[];
  readonly holdings: readonly object[];
  readonly cards: ShopPapers['cards'];
  readonly grooveCards: ShopPapers['grooves'];
  readonly steps: ShopPapers['order']['steps'];
  readonly storySticks: ShopPapers['sticks'];
  readonly tenons: ShopPapers['tenons'];
  readonly strips: ShopPapers['strips'];
  readonly testBlanks: ShopPapers['testBlanks'];
  readonly cutList: ShopPapers['cutList'];
  readonly wood: ShopPapers['bills'];
  readonly hardware: ShopPapers['hardware'];
  readonly layouts: ShopPapers['layouts'];
  readonly toBuy: ShopPapers['toBuy'];
  readonly glueUp: ShopPapers['glueUp'];
  readonly clamps: object;
  readonly diagonals: ShopPapers['diagonals'];
  readonly glue: ShopPapers['glue'];
}

export function papersSummary(papers: ShopPapers, aidFiles: ReadonlyMap<string, BoardFiles>): PapersSummary {
  return {
    shop: papers.shop.name,
    atHand: papers.shop,
    aids: papers.aids.map(({ board, kind, purpose, count, handed }) => ({
      id: board.id,
      kind,
      purpose,
      count,
      handed,
      solid: aidFiles.get(board.id)?.solid ?? null,
      template: aidFiles.get(board.id)?.template ?? null,
    })),
    holdings: papers.holdings.map(({ mortise, ...holding }) => ({ mortise: mortise.id, ...holding })),
    cards: papers.cards,
    grooveCards: papers.grooves,
    steps: papers.order.steps,
    storySticks: papers.sticks,
    tenons: papers.tenons,
    strips: papers.strips,
    testBlanks: papers.testBlanks,
    cutList: papers.cutList,
    wood: papers.bills,
    hardware: papers.hardware,
    layouts: papers.layouts,
    toBuy: papers.toBuy,
    glueUp: papers.glueUp,
    clamps: {
      ...papers.clamps,
      pads: papers.clamps.pads.map(({ board, ...pad }) => ({ id: board.id, ...pad })),
    },
    diagonals: papers.diagonals,
    glue: papers.glue,
  };
}

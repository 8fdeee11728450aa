import type { Say } from '../../length/index.js';
import { type Solids, volume } from '../../solid/index.js';
import { moving, type Strength, strengthOn, type Worked } from '../../strength/index.js';
import { type JigAtHand, type Shop, toldBy } from '../at-hand/index.js';
import { type OutlineTemplate, outlineTemplates, printedTemplates } from '../boards/index.js';
import type { ClampPlan } from '../clamps/index.js';
import { type Diagonals, diagonalsOf, type GlueMass, type GlueUp, glueMass } from '../glue-up/index.js';
import { type Aid, type Holding, hornsOf, type Uncut, uncutMortises } from '../holding/index.js';
import { type StoryStick, storySticks } from '../marks/index.js';
import { type OrderOfWork, orderOfWork, type WholeJob } from '../order/index.js';
import {
  type GrooveCard,
  grooveCards,
  type SetupCard,
  setupCards,
  type TestBlank,
  testBlanks,
} from '../set-up/index.js';
import {
  type CutRow,
  cutList,
  cutToFit,
  type HardwareRow,
  hardwareList,
  type LumberPlan,
  type StockLayout,
  type StockPlan,
  stockPlan,
  type WoodBill,
  woodBill,
} from '../stock/index.js';
import { type StripPlan, type TenonKind, tenonSchedule, tenonStrips } from '../tenons/index.js';

/** What the person needs between milled boards and the glued-up piece, as data; papers only set it. */
export interface ShopPapers {
  readonly shop: Shop;
  readonly revision: string;
  readonly holdings: readonly Holding[];
  /** Pieces made to hold, guide and clamp the work. */
  readonly aids: readonly Aid[];
  readonly cards: readonly SetupCard[];
  /** Mortises that no card and no step tells how to cut, and why. */
  readonly uncut: readonly Uncut[];
  /** For grooves and rebates. */
  readonly grooves: readonly GrooveCard[];
  readonly order: OrderOfWork;
  readonly templates: readonly OutlineTemplate[];
  /** Outside diameter of the guide bush that follows them; a bearing does when left out, mm. */
  readonly bush?: number;
  readonly sticks: readonly StoryStick[];
  readonly tenons: readonly TenonKind[];
  readonly strips: readonly StripPlan[];
  readonly testBlanks: readonly TestBlank[];
  readonly cutList: readonly CutRow[];
  readonly bills: readonly WoodBill[];
  readonly hardware: readonly HardwareRow[];
  readonly layouts: readonly StockLayout[];
  readonly toBuy: LumberPlan['toBuy'];
  readonly glueUp: GlueUp;
  readonly clamps: ClampPlan;
  readonly diagonals: readonly Diagonals[];
  readonly glue: GlueMass;
  /** What it bears; undefined when nothing says what any surface is for. */
  readonly strength: Strength | undefined;
  /** What the seasons of the shop's climate do to it. */
  readonly moving: Worked;
}

/** What the papers are made from: the solids, the shop, and what the checks have already worked out. */
export interface PapersRequest {
  readonly solids: Solids;
  readonly shop: Shop;
  readonly jig: JigAtHand;
  readonly holdings: readonly Holding[];
  /** To hold, guide and clamp. */
  readonly aids: readonly Aid[];
  readonly glueUp: GlueUp;
  readonly clamps: ClampPlan;
  readonly say: Say;
  readonly revision: string;
  /** Outside diameter of the guide bush the templates are made for, when one is used, mm. */
  readonly bush?: number;
}

/** Every paper of the bench, each worked out once and from the others where they agree. */
export function shopPapers(request: PapersRequest): ShopPapers {
  const { solids, shop, jig, holdings, aids, glueUp, clamps, say, revision } = request;
  const told = toldBy(shop);
  const { design } = solids;
  const boards = design.boards.map(({ board }) => board);
  const cards = setupCards({ design, holdings, aids, jig, shop });
  const grooves = grooveCards(design, shop);
  const templates = outlineTemplates(boards, shop);
  const tenons = tenonSchedule(design, shop, say);
  const strips = tenonStrips(tenons, shop);
  const blanks = testBlanks(cards, boards, shop);
  const rows = cutList({
    design,
    shop,
    volumes: new Map([...solids.boards.values()].map(({ id, own }) => [id, volume(own)])),
    aids,
    templates,
    testBlanks: blanks,
    strips,
    horns: new Map(
      boards.map(({ id }) => [id, hornsOf(id, holdings).reduce((sum, horn) => sum + horn.length, 0)]),
    ),
  });
  const stock = stockPlan(rows, shop, say);
  const order = orderOfWork(design, holdings, cards, {
    printed: printedTemplates(boards),
    templates,
    ...(request.bush !== undefined && { bush: request.bush }),
    aids,
    testBlanks: blanks,
    ...sawnTogether(rows, stock),
    strips,
    stages: glueUp.stages,
    grooves,
    cutters: shop.cutters,
    fixings: glueUp.fixings,
  });
  return {
    shop,
    revision,
    holdings,
    aids,
    cards,
    uncut: uncutMortises(design, holdings, say),
    grooves,
    order,
    templates,
    ...(request.bush !== undefined && { bush: request.bush }),
    sticks: storySticks(design, cards),
    tenons,
    strips,
    testBlanks: blanks,
    cutList: cutToFit(rows, order.fitAfter),
    bills: woodBill(rows, stock.lengths),
    hardware: hardwareList(design),
    layouts: stock.layouts,
    toBuy: stock.toBuy,
    glueUp,
    clamps,
    diagonals: diagonalsOf(design, glueUp),
    glue: glueMass(design, stock.edgeJointsMm2),
    strength: strengthOn(solids, told),
    moving: moving(design, told.season),
  };
}

/** Which boards are milled in one length, and which boards and lengths are glued up from strips first. */
function sawnTogether(
  rows: readonly CutRow[],
  { lengths, gluedUp }: StockPlan,
): Pick<WholeJob, 'gluedUp' | 'milledIn'> {
  const byMark = new Map(
    rows.flatMap((row) =>
      row.kind === 'board' ? row.boards.map((id, i) => [row.marks[i]!, id] as const) : [],
    ),
  );
  const boardsIn = (mark: string): readonly string[] => {
    const length = lengths.find((one) => one.mark === mark);
    return (length ? length.pieces.map((piece) => piece.mark) : [mark]).flatMap(
      (one) => byMark.get(one) ?? [],
    );
  };
  return {
    gluedUp: [...gluedUp]
      .map(([mark, strips]) => ({ mark, boards: boardsIn(mark), strips }))
      .filter(({ boards }) => boards.length > 0),
    milledIn: new Map(lengths.flatMap(({ mark }) => boardsIn(mark).map((id) => [id, mark] as const))),
  };
}

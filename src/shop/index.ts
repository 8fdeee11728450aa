export { type BoardEnds, boardEnds, type EndsWord } from './board-ends.js';
export { boardFeet, type WoodVolume, woodVolume } from './board-feet.js';
export { boardMarks, markWords } from './board-marks.js';
export { type BoardState, boardStates } from './board-states.js';
export { boardsToFit } from './boards-to-fit.js';
export { builtInShop } from './built-in-shop.js';
export { FEED } from './card-words.js';
export type { ClampBearing } from './clamp-bearing.js';
export { type PadUse, padBoard, padUse } from './clamp-pad.js';
export type { ClampPad } from './clamp-pads.js';
export {
  type Clamp,
  type ClampEnd,
  type ClampOffset,
  type ClampPlan,
  clampPlan,
  jawsOutOfParallel,
} from './clamps.js';
export { type CutListRequest, type CutRow, type CutWhen, cutList, cutWords } from './cut-list.js';
export type {
  Cut,
  CuttingPlan,
  LaidPart,
  LaidStock,
  Outcome,
  PartToCut,
  Rect,
  Sawing,
  Stock,
  Unplaced,
} from './cutting.js';
export { type Corner, type Diagonal, type Diagonals, diagonalsOf } from './diagonals.js';
export { faceWords } from './face-words.js';
export { cheekArea, type GlueMass, glueMass } from './glue-mass.js';
export { type GlueStep, type GlueUp, glueUp, type TenonSeating } from './glue-up.js';
export { type Entry, entriesOf, type Freedom, freedomOf, type JointFreedom } from './glue-up-entry.js';
export { type Blocked, bestMove, type Move, type OrderStep } from './glue-up-move.js';
export { type Conflict, type Order, orderOf } from './glue-up-order.js';
export { type PathBlock, pathBlocks } from './glue-up-path.js';
export { GLUE_UP_PRACTICE } from './glue-up-practice.js';
export { type ProvedGlueUp, provedGlueUp } from './glue-up-proved.js';
export type { GlueStage } from './glue-up-stages.js';
export { guillotine } from './guillotine.js';
export { type Hand, handsOf } from './handed.js';
export { type HardwareRow, hardwareList } from './hardware-list.js';
export { type Hold, holdOver } from './hold.js';
export type {
  Aid,
  BrokenLimit,
  FromFace,
  Holding,
  RailBearing,
  Refusal,
  Stage,
  StageName,
  SupportUse,
  WedgeUse,
} from './holding.js';
export { HOLD } from './holding-practice.js';
export { type Holdings, holdingsOf, unheld } from './holdings-of.js';
export { type Horn, hornsOf } from './horns.js';
export { inBoth } from './in-both.js';
export { type JigAtHand, jigAtHand, type RailAtHand } from './jig-at-hand.js';
export { type LayoutPart, layoutParts } from './layout-parts.js';
export { type LumberPlan, lumberLayouts, type ToBuy } from './lumber-layout.js';
export { type StickMark, type StickMarkKind, type StoryStick, storySticks } from './marks.js';
export { type OffcutWedge, offcutWedges } from './offcut-wedges.js';
export { type OrderOfWork, orderOfWork } from './order-of-work.js';
export { type OutlineTemplate, outlineTemplates } from './outline-templates.js';
export { deepestPass, passesOf, plungeSpacing, plungesOf } from './passes.js';
export { readShop, shopUnits } from './read-shop.js';
export { withHorn } from './resting.js';
export { fnv1a, revisionOf } from './revision.js';
export { type Allowance, type RoughSize, roughSize } from './rough-size.js';
export { type BoardKind, boardKinds } from './same-boards.js';
export type { CardCut, Figure, Pass, RailSetting, SetupCard, TestCut } from './setup-card.js';
export { type CardRequest, setupCards } from './setup-cards.js';
export { type StockLayout, sheetLayouts } from './sheet-layout.js';
export type {
  BushAtHand,
  ClampAtHand,
  CutterAtHand,
  GlueAtHand,
  LumberAtHand,
  RouterAtHand,
  SheetAtHand,
  Shop,
  Verdict,
} from './shop.js';
export { shopExample } from './shop-example.js';
export { type PapersRequest, type ShopPapers, shopPapers } from './shop-papers.js';
export { type SlotGrain, type SlotWidth, slotWidthOf } from './slot-width.js';
export { stagesOf } from './stages.js';
export { STOCK_PRACTICE } from './stock-practice.js';
export { type EdgeStyle, type TenonEdge, tenonEdges } from './tenon-edges.js';
export { type Grooves, groovesOf, type Relief, reliefOf } from './tenon-relief.js';
export { type AlignmentSlack, type TenonKind, tenonSchedule } from './tenon-schedule.js';
export { type Strip, type StripPlan, tenonStrips } from './tenon-strips.js';
export { type TestBlank, testBlanks } from './test-blanks.js';
export { baseOf, plateOf, stopDistance, type Travelling } from './travelling.js';
export { type BillItem, type WoodBill, woodBill } from './wood-bill.js';
export { seenStage } from './work-at-stage.js';
export type { WorkKind, WorkStep } from './work-step.js';

export { crosscutLayouts } from './crosscut-layouts.js';
export { type CutListRequest, type CutRow, type CutWhen, cutList, cutToFit, cutWords } from './cut-list.js';
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
export { guillotine } from './guillotine.js';
export { type HardwareRow, hardwareList } from './hardware-list.js';
export { type LayoutPart, layoutParts } from './layout-parts.js';
export { type LumberPlan, lumberLayouts, type ToBuy } from './lumber-layout.js';
export { type Gathered, gathered, type MillingLength } from './milling-lengths.js';
export { type Allowance, type RoughSize, roughSize } from './rough-size.js';
export { cutsTooShort, shortestPiece } from './saw-limits.js';
export { type StockLayout, sheetLayouts } from './sheet-layout.js';
export { type StockPlan, stockPlan } from './stock-plan.js';
export { type BillItem, type WoodBill, woodBill } from './wood-bill.js';

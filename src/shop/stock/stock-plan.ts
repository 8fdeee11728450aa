import type { Say } from '../../length/index.js';
import type { Shop } from '../at-hand/index.js';
import { MARK_LETTERS } from '../words/index.js';
import { crosscutLayouts } from './crosscut-layouts.js';
import type { CutRow } from './cut-list.js';
import { type LayoutPart, layoutParts } from './layout-parts.js';
import { type LumberPlan, lumberLayouts } from './lumber-layout.js';
import { gathered, type MillingLength } from './milling-lengths.js';
import { numberedOffcuts } from './numbered-offcuts.js';
import { type StockLayout, sheetLayouts } from './sheet-layout.js';

/** How everything on a cut list comes out of sheets, lumber and scrap. mm */
export interface StockPlan extends LumberPlan {
  /** What is bought, short pieces gathered into lengths. */
  readonly parts: readonly LayoutPart[];
  readonly lengths: readonly MillingLength[];
  /** Of sheets, of lumber, and of the lengths, those from scrap last. */
  readonly layouts: readonly StockLayout[];
  /** Edge joints of blanks that are glued up from strips, mm². */
  readonly edgeJointsMm2: number;
}

/** Every piece of a cut list on the stock at hand, so that no machine is given a piece too short for it. */
export function stockPlan(rows: readonly CutRow[], shop: Shop, say: Say): StockPlan {
  const all = layoutParts(rows);
  const of = (scrap: boolean, prefix: string) =>
    gathered(
      all.filter((part) => part.scrap === scrap),
      shop,
      prefix,
    );
  const [bought, found] = [of(false, MARK_LETTERS['bought length']), of(true, MARK_LETTERS['found length'])];
  const lumber = lumberLayouts(bought.parts, shop, say);
  return {
    ...bought,
    ...lumber,
    layouts: numberedOffcuts([
      ...sheetLayouts(bought.parts, shop, say),
      ...lumber.layouts,
      ...crosscutLayouts([...bought.lengths, ...found.lengths], shop, say),
    ]),
    edgeJointsMm2: bought.parts.reduce(
      (sum, { mark, length, thickness }) => sum + ((lumber.gluedUp.get(mark) ?? 1) - 1) * length * thickness,
      0,
    ),
  };
}

import type { Say } from '../../length/index.js';
import { sheetNames } from '../../tables/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { type SheetAtHand, type Shop, sheetsFor, type Verdict } from '../at-hand/index.js';
import { STOCK_PRACTICE } from '../practice/index.js';
import type { CuttingPlan, PartToCut } from './cutting.js';
import { guillotine } from './guillotine.js';
import type { LayoutPart } from './layout-parts.js';
import { cutsTooShort, shortestPiece } from './saw-limits.js';

/** Parts of one sheet material and thickness laid out on sheets. mm */
export interface StockLayout {
  readonly title: string;
  readonly material: string;
  /** Of the stock: measured where the shop file says it. */
  readonly thickness: number;
  /** True when every part's length lies along the stock's, for its grain. */
  readonly grainLocked: boolean;
  readonly kerf: number;
  /** Not verified when the kerf, the sheet or the rough sizes were taken from common practice. */
  readonly verdict: Verdict;
  readonly parts: readonly LayoutPart[];
  readonly plan: CuttingPlan;
  /** What was assumed, and what the person should know; empty when all is known. */
  readonly notes: readonly string[];
}

/** Sheets with no grain on their faces; a part may lie either way. Common practice, no source. */
const NO_GRAIN: ReadonlySet<string> = new Set([
  'medium density fibreboard',
  'hardboard',
  'particleboard',
  'phenolic laminate',
]);

/** Layouts of everything made of sheet goods, one for each material and thickness. */
export function sheetLayouts(parts: readonly LayoutPart[], shop: Shop, say: Say): readonly StockLayout[] {
  const sheetParts = parts.filter(({ material }) => sheetNames.includes(material));
  const groups: LayoutPart[][] = [];
  for (const part of sheetParts) {
    const same = groups.find(
      ([first]) => first!.material === part.material && first!.thickness === part.thickness,
    );
    if (same) same.push(part);
    else groups.push([part]);
  }
  return groups.map((group) => layoutOf(group, shop, say));
}

function layoutOf(parts: readonly LayoutPart[], shop: Shop, say: Say): StockLayout {
  const { material, thickness } = parts[0]!;
  const found = sheetsFor(shop.sheets, material, thickness);
  const assumed: SheetAtHand = { name: material, ...STOCK_PRACTICE.sheet, thickness };
  const sheets = found.length > 0 ? found : [assumed];
  const kerf = shop.sawKerf ?? STOCK_PRACTICE.kerf;
  const shortest = shortestPiece(shop).saw;
  const known = found.length > 0 && shop.sawKerf !== undefined;
  const grainLocked = !NO_GRAIN.has(material);
  const plan = guillotine(
    parts.map(
      ({ mark, length, width }): PartToCut => ({
        id: mark,
        length,
        width,
        grain: grainLocked ? 'along' : 'free',
      }),
    ),
    sheets.map((sheet) => ({
      name: `${sheet.name} ${say.fine(sheet.thickness)}`,
      length: Math.max(sheet.length, sheet.width),
      width: Math.min(sheet.length, sheet.width),
    })),
    {
      kerf,
      trim: { ends: STOCK_PRACTICE.sheetTrim, edges: STOCK_PRACTICE.sheetTrim },
      first: 'rip',
      shortest,
    },
  );
  const measured = sheets[0]!.thickness;
  return {
    title: `${material}, ${say.fine(measured)}`,
    material,
    thickness: measured,
    grainLocked,
    kerf,
    verdict: known ? 'passed' : 'not verified',
    parts,
    plan,
    notes: [
      ...(found.length === 0
        ? [
            `the shop file names no ${material} of ${say.fine(thickness)}; a sheet of ${say.length(assumed.length)} × ${say.length(assumed.width)} is assumed`,
          ]
        : []),
      ...(shop.sawKerf === undefined
        ? [`the shop file gives no saw kerf; ${say.fine(kerf)} is assumed`]
        : []),
      ...(Math.abs(measured - thickness) > SAME_POINT
        ? [
            `the parts are drawn ${say.fine(thickness)} thick, the sheet measures ${say.fine(measured)}: give the model the measured thickness`,
          ]
        : []),
      ...partSheets(plan, say),
      ...shortCutNotes(plan, shortest, say),
      ...plan.unplaced.map(
        ({ part, needed }) =>
          `${part.id}, ${say.length(part.length)} × ${say.length(part.width)}, fits no sheet: one of at least ${say.length(needed.length)} × ${say.length(needed.width)} is needed${grainLocked ? ', grain along the first' : ''}`,
      ),
    ],
  };
}

/** What to do with a cut the saw may not make. */
const shortCutNotes = (plan: CuttingPlan, shortest: number, say: Say): readonly string[] =>
  cutsTooShort(plan, shortest).map(
    ({ stock, cut }) =>
      `sheet ${stock}, cut ${cut.number}: the piece is ${say.length(cut.direction === 'rip' ? cut.piece.length : Math.max(cut.piece.length, cut.piece.width))} along the cut, less than the ${say.length(shortest)} the saw may be given: cut it with a hand saw or jigsaw`,
  );

/** What part of each sheet is used: a smaller one may be bought. */
const partSheets = ({ pieces }: CuttingPlan, say: Say): readonly string[] =>
  pieces.map(({ parts, usable }, i) => {
    const length = Math.max(...parts.map((part) => part.x + part.length)) + usable.x;
    const width = Math.max(...parts.map((part) => part.y + part.width)) + usable.y;
    return `sheet ${i + 1}: a piece of ${say.length(length)} × ${say.length(width)} would do, trim included`;
  });

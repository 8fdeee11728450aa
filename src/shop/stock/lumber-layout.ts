import type { Say } from '../../length/index.js';
import { sheetNames } from '../../tables/index.js';
import { SAME_POINT } from '../../tolerances.js';
import type { LumberAtHand, Shop } from '../at-hand/index.js';
import { type WoodVolume, woodVolume } from '../boards/index.js';
import { STOCK_PRACTICE } from '../practice/index.js';
import type { PartToCut, Stock, Unplaced } from './cutting.js';
import { guillotine } from './guillotine.js';
import type { LayoutPart } from './layout-parts.js';
import { shortestPiece } from './saw-limits.js';
import type { StockLayout } from './sheet-layout.js';

/** What to buy of one wood and thickness when no lumber is at hand. mm */
export interface ToBuy extends WoodVolume {
  readonly material: string;
  /** Rough thickness of the parts: the lumber must be at least this thick. */
  readonly thickness: number;
  readonly widest: number;
  readonly longest: number;
  readonly count: number;
  /** Rough parts and waste. */
  readonly volumeMm3: number;
}

/** Solid wood laid out on the lumber at hand, or what to buy where there is none. */
export interface LumberPlan {
  readonly layouts: readonly StockLayout[];
  readonly toBuy: readonly ToBuy[];
  /** Parts wider than the lumber, by their marks, and from how many strips each is glued up. */
  readonly gluedUp: ReadonlyMap<string, number>;
}

/**
 * Boards onto lumber: each on the thinnest that is thick enough, the grain along it.
 *
 * The shop file does not say which wood its lumber is: it is taken for the design's.
 *
 * @param waste share bought beyond the rough parts when no lumber is at hand
 */
export function lumberLayouts(
  parts: readonly LayoutPart[],
  shop: Shop,
  say: Say,
  waste: number = STOCK_PRACTICE.waste,
): LumberPlan {
  const solid = parts.filter(({ material, scrap }) => !scrap && !sheetNames.includes(material));
  if (shop.lumber.length === 0) return { layouts: [], toBuy: buying(solid, waste), gluedUp: new Map() };
  const thicknesses = [...new Set(shop.lumber.map(({ thickness }) => thickness))].toSorted((a, b) => a - b);
  const on = (part: LayoutPart) => thicknesses.find((one) => one >= part.thickness - SAME_POINT);
  const thick = solid.filter((part) => on(part) === undefined);
  const left = [...onePerSize(shop.lumber)];
  const layouts: StockLayout[] = [];
  for (const material of new Set(solid.map((part) => part.material))) {
    for (const thickness of thicknesses) {
      const group = solid.filter((part) => part.material === material && on(part) === thickness);
      if (group.length === 0) continue;
      layouts.push(layoutOf(group, thickness, left, shop, say));
      takeOff(left, layouts.at(-1)!, thickness);
    }
  }
  const laid = layouts.flatMap((layout) => layout.parts);
  const stripsOfPart = solid.map(
    ({ mark }) => [mark, laid.filter((part) => part.mark.startsWith(`${mark}/`)).length] as const,
  );
  return {
    layouts,
    toBuy: buying(thick, waste),
    gluedUp: new Map(stripsOfPart.filter(([, count]) => count > 0)),
  };
}

function layoutOf(
  parts: readonly LayoutPart[],
  thickness: number,
  lumber: readonly LumberAtHand[],
  shop: Shop,
  say: Say,
): StockLayout {
  const { material } = parts[0]!;
  const kerf = shop.sawKerf ?? STOCK_PRACTICE.kerf;
  const glued = parts.map((part) => ({ part, strips: stripsOf(part, thickness, lumber) }));
  const pieces = glued.flatMap(({ strips }) => strips);
  const stocks = lumber
    .filter((one) => one.thickness === thickness && one.count > 0)
    .map(
      ({ length, width, count }): Stock => ({ name: stockName(length, width, say), length, width, count }),
    );
  const plan = guillotine(
    pieces.map(({ mark, length, width }): PartToCut => ({ id: mark, length, width, grain: 'along' })),
    stocks,
    {
      kerf,
      trim: { ends: STOCK_PRACTICE.lumberEndTrim, edges: STOCK_PRACTICE.lumberEdgeTrim },
      first: 'crosscut',
      shortest: shortestPiece(shop).saw,
    },
  );
  const known = shop.sawKerf !== undefined && shop.roughAllowance !== undefined;
  return {
    title: `${material} lumber, ${say.fine(thickness)} thick`,
    material,
    thickness,
    grainLocked: true,
    kerf,
    verdict: known ? 'passed' : 'not verified',
    parts: pieces,
    plan,
    notes: [
      ...(shop.sawKerf === undefined
        ? [`the shop file gives no saw kerf; ${say.fine(kerf)} is assumed`]
        : []),
      ...(shop.roughAllowance === undefined
        ? ['the shop file gives no rough allowance: the parts are laid out in their finished sizes']
        : []),
      ...glued
        .filter(({ strips }) => strips.length > 1)
        .map(
          ({ part, strips }) =>
            `${part.mark} is wider than the lumber: it is glued up from ${strips.length} strips ${say.length(strips[0]!.width)} wide, edges jointed`,
        ),
      ...plan.unplaced.map((one) => wanting(one, thickness, say)),
    ],
  };
}

const stockName = (length: number, width: number, say: Say): string =>
  `${say.length(length)} × ${say.length(width)}`;

/** What is missing. */
function wanting({ part, because, needed }: Unplaced, thickness: number, say: Say): string {
  const what = `${part.id}, ${say.length(part.length)} × ${say.length(part.width)} rough`;
  const least = `lumber at least ${say.length(needed.length)} long, ${say.length(needed.width)} wide and ${say.length(thickness)} thick`;
  return because === 'used up'
    ? `${what}, finds no room on the lumber at hand: get more, ${least}`
    : `${what}, fits no lumber at hand: get ${least}`;
}

/** Most strips a board is glued up from before a wider board is asked for. Common practice, no source. */
const MOST_STRIPS = 4;

/** The part itself, or the strips it is glued up from when it is wider than all lumber that is long enough. */
function stripsOf(
  part: LayoutPart,
  thickness: number,
  lumber: readonly LumberAtHand[],
): readonly LayoutPart[] {
  const long = lumber.filter(
    (one) =>
      one.thickness === thickness &&
      one.count > 0 &&
      one.length >= part.length + 2 * STOCK_PRACTICE.lumberEndTrim,
  );
  const trim = Math.max(STOCK_PRACTICE.lumberEdgeTrim, STOCK_PRACTICE.kerf);
  const widest = Math.max(0, ...long.map((one) => one.width)) - 2 * trim;
  if (part.width <= widest) return [part];
  for (let count = 2; count <= MOST_STRIPS; count += 1) {
    const width = (part.width + (count - 1) * STOCK_PRACTICE.glueLine) / count;
    if (width <= widest) {
      return Array.from({ length: count }, (_, i) => ({
        ...part,
        width,
        mark: `${part.mark}/${i + 1}`,
        name: `${part.name}, strip ${i + 1} of ${count}`,
      }));
    }
  }
  return [part];
}

/** Lumber of one size on one line, so that each is counted once. */
function onePerSize(lumber: readonly LumberAtHand[]): readonly LumberAtHand[] {
  const sizes: LumberAtHand[] = [];
  for (const one of lumber) {
    const at = sizes.findIndex(
      (other) =>
        other.thickness === one.thickness && other.width === one.width && other.length === one.length,
    );
    if (at < 0) sizes.push(one);
    else sizes[at] = { ...one, count: one.count + sizes[at]!.count };
  }
  return sizes;
}

/** Lumber that one wood has used is not there for the next. */
function takeOff(left: LumberAtHand[], { plan }: StockLayout, thickness: number): void {
  left.forEach((one, i) => {
    const used = plan.pieces.filter(
      ({ stock }) => one.thickness === thickness && stock.length === one.length && stock.width === one.width,
    ).length;
    left[i] = { ...one, count: Math.max(0, one.count - used) };
  });
}

function buying(parts: readonly LayoutPart[], waste: number): readonly ToBuy[] {
  const keys = [...new Set(parts.map(({ material, thickness }) => `${material} ${thickness}`))];
  return keys.map((key) => {
    const group = parts.filter(({ material, thickness }) => `${material} ${thickness}` === key);
    const { material, thickness } = group[0]!;
    const volumeMm3 =
      (1 + waste) * group.reduce((sum, part) => sum + part.length * part.width * thickness, 0);
    return {
      material,
      thickness,
      widest: Math.max(...group.map((part) => part.width)),
      longest: Math.max(...group.map((part) => part.length)),
      count: group.length,
      volumeMm3,
      ...woodVolume(volumeMm3),
    };
  });
}

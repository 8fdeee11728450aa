import type { Say } from '../../length/index.js';
import type { Shop } from '../at-hand/index.js';
import { STOCK_PRACTICE } from '../practice/index.js';
import { cutOrder } from './cut-order.js';
import type { LaidStock, Rect } from './cutting.js';
import { cutInTwo, freePiece } from './guillotine-tree.js';
import type { MillingLength } from './milling-lengths.js';
import type { StockLayout } from './sheet-layout.js';

/** How the milled lengths are cut into their pieces: one layout a wood and thickness, crosscuts only. */
export function crosscutLayouts(
  lengths: readonly MillingLength[],
  shop: Shop,
  say: Say,
): readonly StockLayout[] {
  const keys = [...new Set(lengths.map(({ material, thickness }) => `${material} ${thickness}`))];
  return keys.map((key) =>
    layoutOf(
      lengths.filter(({ material, thickness }) => `${material} ${thickness}` === key),
      shop,
      say,
    ),
  );
}

function layoutOf(lengths: readonly MillingLength[], shop: Shop, say: Say): StockLayout {
  const { material, thickness, scrap } = lengths[0]!;
  const kerf = shop.sawKerf ?? STOCK_PRACTICE.kerf;
  return {
    title: `${scrap ? '' : 'milled lengths, '}${material}, ${say.fine(thickness)} thick`,
    material,
    thickness,
    grainLocked: true,
    kerf,
    verdict: shop.sawKerf === undefined ? 'not verified' : 'passed',
    parts: lengths.flatMap(({ pieces }) => pieces),
    plan: {
      pieces: lengths.map((length) => crosscut(length, kerf, say)),
      unplaced: [],
    },
    notes: [
      `${lengths.map(({ mark }) => mark).join(', ')}: plane and rip the whole length, then crosscut; its pieces are too short to plane or rip one by one. Keep hold of the last offcut, clear of the blade`,
    ],
  };
}

/** The pieces one after the other from the reference end; the rest stays in the hand. */
function crosscut({ mark, length, width, pieces }: MillingLength, kerf: number, say: Say): LaidStock {
  const usable: Rect = { x: 0, y: 0, length, width };
  const whole = freePiece(usable);
  pieces.reduce((rest, part) => {
    const { near, far } = cutInTwo(rest, 'crosscut', part.length, kerf);
    near!.use = { kind: 'part', part: { ...near!.rect, id: part.mark, turned: false } };
    return far!;
  }, whole);
  return {
    stock: { name: `${mark}, ${say.length(length)} × ${say.length(width)}`, length, width, count: 1 },
    usable,
    ...cutOrder(whole, 'crosscut'),
  };
}

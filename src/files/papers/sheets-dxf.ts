import { cutStrip, type Entity, type Layer, scaledEntities } from '../../drawing/index.js';
import type { Units } from '../../length/index.js';
import { rectangle } from '../../profile/index.js';
import type { LaidStock, Rect, StockLayout } from '../../shop/index.js';
import { dxfScale } from '../dxf/index.js';
import { drawingDxf } from '../templates/index.js';
import { kerfRect, type LayoutPaper, sizeWords } from './layout-words.js';

/** Between two sheets of the file, mm: room for a title. */
const BETWEEN = 100;
const LETTERS = 20;

/** The scale bar, mm. */
const BAR = 100;

/** Pictures of cuts are drawn this many times larger than on paper, so that they are read beside the stock, in rows of a width, mm. */
const PICTURES = 8;
const ROW = 1600;

/** How the pictures are read, where no line is heavier than another. */
const KEY =
  'Double ring: a cut and its setting from the side with the fence line; single ring: the cut that takes this piece up; dashed: waste';

/** Letters smaller than this are read by nobody: the mark alone is written, mm. */
const LEAST = 6;

/** Between the stock and what stands below it, mm. */
const GAP = 40;

/**
 * The layouts as a DXF file, full size, the pieces of stock one above the other, each with the order of its cuts in small
 * pictures below it.
 *
 * `CUT`: outlines of the parts. `MARK`: the middle of every saw cut, never on a part's outline. `NOTE`: marks, names and
 * offcuts. `LEGEND`: the stock, titles and pictures. `SCALE`: a bar of 100 mm.
 *
 * @param units of the coordinates
 */
export function sheetsDxf(layouts: readonly StockLayout[], units: Units, paper: LayoutPaper): Uint8Array {
  const entities: Entity[] = [
    line('SCALE', [0, -60], [BAR, -60]),
    note('SCALE', [0, -90], `${paper.say.length(BAR)}; revision ${paper.revision}`),
    note('LEGEND', [0, -140], KEY),
  ];
  let bottom = 0;
  for (const layout of layouts) {
    for (const piece of layout.plan.pieces) {
      const strip = cutStrip(piece, layout, paper.say.rule, ROW / PICTURES);
      entities.push(...scaledEntities(strip.draw([0, 0]), PICTURES, [0, bottom], 'LEGEND'));
      bottom += piece.cuts.length > 0 ? strip.height * PICTURES + GAP : 0;
      entities.push(...pieceEntities(piece, layout, bottom, paper));
      bottom += piece.stock.width + BETWEEN;
    }
  }
  return drawingDxf(entities, dxfScale(units));
}

function pieceEntities(
  { stock, parts, cuts, offcuts }: LaidStock,
  layout: StockLayout,
  bottom: number,
  { say }: LayoutPaper,
): readonly Entity[] {
  const raised = (rect: Rect): Rect => ({ ...rect, y: rect.y + bottom });
  const named = (piece: Rect & { readonly id: string }, more: string) => {
    const { x, y, length, width } = raised(piece);
    // letters are no wider than high
    const heightOf = (words: string) => Math.min(LETTERS, width / 2, (0.9 * length) / words.length);
    const full = `${piece.id} ${more}`;
    const words = heightOf(full) < LEAST ? piece.id : full;
    const height = heightOf(words);
    return note('NOTE', [x + 0.05 * length, y + (width - height) / 2], words, height);
  };
  const nameOf = (id: string) => layout.parts.find(({ mark }) => mark === id)?.name ?? '';
  return [
    outline('LEGEND', raised({ x: 0, y: 0, length: stock.length, width: stock.width })),
    note('LEGEND', [0, bottom + stock.width + LETTERS], `${layout.title}: ${sizeWords(stock, say)}`),
    ...cuts.map((cut) => sawLine(raised(kerfRect(cut, layout.kerf)), cut.direction === 'rip')),
    ...parts.map((part) => outline('CUT', raised(part))),
    ...parts.map((part) => named(part, nameOf(part.id))),
    ...offcuts.map((offcut) => named(offcut, `offcut ${sizeWords(offcut, say)}`)),
  ];
}

const outline = (layer: Layer, rect: Rect): Entity => ({ layer, kind: 'profile', profile: rectangle(rect) });

const line = (layer: Layer, from: readonly [number, number], to: readonly [number, number]): Entity => ({
  layer,
  kind: 'line',
  from,
  to,
});

const note = (layer: Layer, at: readonly [number, number], text: string, height = LETTERS): Entity => ({
  layer,
  kind: 'text',
  at,
  height,
  text,
  rotationDeg: 0,
});

/** The middle of a saw cut. */
const sawLine = ({ x, y, length, width }: Rect, along: boolean): Entity =>
  along
    ? line('MARK', [x, y + width / 2], [x + length, y + width / 2])
    : line('MARK', [x + length / 2, y], [x + length / 2, y + width]);

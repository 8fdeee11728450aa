import type { Entity, Layer } from '../../drawing/index.js';
import { INCH, type Units } from '../../length/index.js';
import { rectangle } from '../../profile/index.js';
import type { LaidStock, Rect, StockLayout } from '../../shop/index.js';
import { arcsTemplate } from '../templates/index.js';
import { kerfRect, type LayoutPaper, sizeWords } from './layout-words.js';

/** Space between two sheets of the file, mm: room for the words. */
const BETWEEN = 200;
const LETTERS = 20;

/** The scale bar, mm. */
const BAR = 100;

/**
 * The layouts as a DXF file, full size, the pieces of stock one above the other.
 *
 * `CUT`: outlines of the parts. `MARK`: the stock and both sides of every saw cut. `NOTE`: marks, cut numbers, offcuts and
 * titles. `SCALE`: a bar of 100 mm.
 *
 * @param units of the coordinates
 */
export function sheetsDxf(layouts: readonly StockLayout[], units: Units, paper: LayoutPaper): Uint8Array {
  const entities: Entity[] = [
    line('SCALE', [0, -60], [BAR, -60]),
    note('SCALE', [0, -90], `${paper.say.length(BAR)}; revision ${paper.revision}`),
  ];
  let bottom = 0;
  for (const layout of layouts) {
    for (const piece of layout.plan.pieces) {
      entities.push(...pieceEntities(piece, layout, bottom, paper));
      bottom += piece.stock.width + BETWEEN;
    }
  }
  const scale =
    units === 'mm'
      ? ({ perMm: 1, insunits: 4, measurement: 1 } as const)
      : ({ perMm: 1 / INCH, insunits: 1, measurement: 0 } as const);
  return new TextEncoder().encode(arcsTemplate({ board: 'sheets', entities }, scale));
}

function pieceEntities(
  { stock, parts, cuts, offcuts }: LaidStock,
  { title, kerf }: StockLayout,
  bottom: number,
  { say }: LayoutPaper,
): readonly Entity[] {
  const raised = (rect: Rect): Rect => ({ ...rect, y: rect.y + bottom });
  const named = (piece: Rect, words: string) =>
    note(
      'NOTE',
      [piece.x + 10, piece.y + piece.width / 2 + bottom],
      words,
      Math.min(LETTERS, piece.width / 2),
    );
  return [
    outline('MARK', raised({ x: 0, y: 0, length: stock.length, width: stock.width })),
    note('NOTE', [0, bottom + stock.width + LETTERS], `${title}: ${sizeWords(stock, say)}`),
    ...cuts.flatMap((cut) => {
      const saw = raised(kerfRect(cut, kerf));
      return [
        ...sides(saw, cut.direction === 'rip'),
        note('NOTE', [saw.x + saw.length / 3, saw.y + saw.width / 3], String(cut.number), LETTERS / 2),
      ];
    }),
    ...parts.map((part) => outline('CUT', raised(part))),
    ...parts.map((part) => named(part, part.id)),
    ...offcuts.map((offcut) => named(offcut, `offcut ${offcut.id} ${sizeWords(offcut, say)}`)),
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

/** Both sides of a saw cut, along it. */
const sides = ({ x, y, length, width }: Rect, along: boolean): readonly Entity[] =>
  along
    ? [line('MARK', [x, y], [x + length, y]), line('MARK', [x, y + width], [x + length, y + width])]
    : [line('MARK', [x, y], [x, y + width]), line('MARK', [x + length, y], [x + length, y + width])];

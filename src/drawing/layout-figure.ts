import type { Vec2 } from '../frame/index.js';
import type { LaidStock, Rect, StockLayout } from '../shop/index.js';
import { disc, letters, path, SMALL } from './draw.js';
import type { FigureBlock } from './flow-block.js';
import { hatchOf } from './hatch.js';
import type { SheetEntity } from './sheet.js';
import { textWidth } from './text-width.js';

const MOST: readonly [width: number, height: number] = [178, 70];

/** A sheet or board of stock with the parts laid on it, offcuts hatched, cuts numbered in their order. */
export function layoutFigure({ stock, parts, cuts, offcuts }: LaidStock, layout: StockLayout): FigureBlock {
  const factor = Math.min(MOST[0] / stock.length, MOST[1] / stock.width);
  return {
    kind: 'figure',
    width: stock.length * factor,
    height: stock.width * factor + 2,
    draw: (at): readonly SheetEntity[] => {
      const p = (x: number, y: number): Vec2 => [at[0] + x * factor, at[1] + y * factor];
      const corners = ({ x, y, length, width }: Rect): readonly Vec2[] => [
        p(x, y),
        p(x + length, y),
        p(x + length, y + width),
        p(x, y + width),
      ];
      return [
        path('visible', corners({ x: 0, y: 0, length: stock.length, width: stock.width }), true),
        ...offcuts.map((one) => hatchOf(one.id, [corners(one)], 45, 3)),
        ...parts.map((one) => path('visible', corners(one), true)),
        ...[...parts, ...offcuts].flatMap((one) => label(one, one.id, factor, p)),
        ...cuts.flatMap(({ piece, direction, at: along, number }): SheetEntity[] => {
          const middle = along + layout.kerf / 2;
          const [x, y] =
            direction === 'rip'
              ? p(piece.x + piece.length / 3, piece.y + middle)
              : p(piece.x + middle, piece.y + piece.width / 3);
          return [
            { ...disc('dimension', [x, y], 2.4), fill: 'paper' },
            letters([x, y - SMALL / 2], String(number), { anchor: 'middle' }),
          ];
        }),
      ];
    },
  };
}

/** A mark in its piece where it fits. */
function label(
  piece: Rect,
  words: string,
  factor: number,
  p: (x: number, y: number) => Vec2,
): readonly SheetEntity[] {
  const [width, height] = [textWidth(words, SMALL, true), SMALL];
  if (width + 1 > piece.length * factor || height + 0.6 > piece.width * factor) return [];
  const [x, y] = p(piece.x + piece.length / 2, piece.y + piece.width / 2);
  const half = width / 2 + 0.5;
  return [
    {
      ...path(
        'table',
        [
          [x - half, y - 1.8],
          [x + half, y - 1.8],
          [x + half, y + 1.8],
          [x - half, y + 1.8],
        ],
        true,
      ),
      fill: 'paper',
    },
    letters([x, y - SMALL / 2], words, { anchor: 'middle', bold: true }),
  ];
}

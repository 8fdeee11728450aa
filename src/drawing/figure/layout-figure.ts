import type { Vec2 } from '../../frame/index.js';
import type { LaidStock, Rect, StockLayout } from '../../shop/index.js';
import type { DrawnFigure } from '../flow/index.js';
import {
  type Box,
  bestPlace,
  disc,
  hatchOf,
  labelAt,
  letters,
  path,
  roomOf,
  type SheetEntity,
  SMALL,
  textWidth,
} from '../sheet/index.js';

const MOST: readonly [width: number, height: number] = [180, 23];

/** A sheet or board of stock: what is kept shows its grain, offcuts are left plain, cuts are numbered in their order. */
export function layoutFigure({ stock, parts, cuts, offcuts }: LaidStock, layout: StockLayout): DrawnFigure {
  const factor = Math.min(MOST[0] / stock.length, MOST[1] / stock.width);
  return {
    kind: 'drawn',
    said: `How ${parts.map(({ id }) => id).join(', ')} lie on the stock, their grain drawn and offcuts plain, cuts numbered in their order.`,
    width: stock.length * factor,
    height: stock.width * factor + 6,
    draw: (at): readonly SheetEntity[] => {
      const p = (x: number, y: number): Vec2 => [at[0] + x * factor, at[1] + 3 + y * factor];
      const corners = ({ x, y, length, width }: Rect): readonly Vec2[] => [
        p(x, y),
        p(x + length, y),
        p(x + length, y + width),
        p(x, y + width),
      ];
      const drawn: SheetEntity[] = [
        path('visible', corners({ x: 0, y: 0, length: stock.length, width: stock.width }), true),
        ...(layout.grainLocked ? parts.map((one) => hatchOf(one.id, [corners(one)], 0, GRAIN_APART)) : []),
        ...parts.map((one) => path('visible', corners(one), true)),
        ...[...parts, ...offcuts].flatMap((one) => label(one, one.id, factor, p)),
      ];
      const room = roomOf(drawn.filter(({ kind }) => kind === 'text'));
      const ring = ([x, y]: Vec2): Box => ({ minX: x - R, maxX: x + R, minY: y - R, maxY: y + R });
      for (const { piece, direction, at: along, number } of cuts) {
        const middle = along + layout.kerf / 2;
        const on = (t: number): Vec2 =>
          direction === 'rip'
            ? p(piece.x + piece.length * t, piece.y + middle)
            : p(piece.x + middle, piece.y + piece.width * t);
        const place = bestPlace(room, [0.33, 0.67, 0.5, 0.2, 0.8, 0.08, 0.92].map(on), ring);
        if (place) {
          room.claim(ring(place));
          drawn.push(
            { ...disc('dimension', place, R), fill: 'paper' },
            letters([place[0], place[1] - SMALL / 2], String(number), { anchor: 'middle' }),
          );
        } else drawn.push(...labelAt(room, on(0.5), String(number), 1, { leader: 'always' }));
      }
      return drawn;
    },
  };
}

/** Lines of grain, along the stock as on the boards, mm. */
const GRAIN_APART = 1.6;

/** Radius of a ring round a cut's number, mm. */
const R = 2.4;

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

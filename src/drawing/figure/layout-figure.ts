import type { Vec2 } from '../../frame/index.js';
import type { LaidStock, Rect, StockLayout } from '../../shop/index.js';
import type { DrawnFigure } from '../flow/index.js';
import {
  type Box,
  bareSize,
  bestPlace,
  boxLoop,
  type DrawingUnits,
  labelAt,
  path,
  roomOf,
  type SheetEntity,
} from '../sheet/index.js';
import { longGrain } from '../view/index.js';
import { cutStrip } from './cut-strip.js';
import { groundOf, pieceWords } from './piece-words.js';

/** Streaks of grain, apart as on the boards of the pictures, mm. */
const GRAIN_APART = 1.5;

/** Between the stock and the strip of its cuts, mm. */
const GAP = 1.5;

/** A strip narrower than this stands below its stock, mm. */
const NARROW = 90;

/** The highest a piece of stock is drawn on a page, mm. */
const HIGHEST = 16;

/** A sheet or board of stock, and the order of its cuts in small pictures beside it or below. */
export function layoutFigure(
  piece: LaidStock,
  layout: StockLayout,
  units: DrawingUnits,
  room: number,
): DrawnFigure {
  const { stock } = piece;
  const factor = Math.min(room / stock.length, HIGHEST / stock.width);
  const laid = laidFigure(piece, layout, units, factor);
  const beside = room - laid.width - 2 * GAP;
  const below = beside < NARROW;
  const strip = cutStrip(piece, layout, units, below ? room : beside);
  const height = below ? laid.height + GAP + strip.height : Math.max(laid.height, strip.height);
  return {
    kind: 'drawn',
    said: `${laid.said} ${strip.said}`,
    width: room,
    height,
    draw: ([x, y]) => [
      ...laid.draw([x, y + height - laid.height]),
      ...strip.draw(below ? [x, y] : [x + room - beside, y + height - strip.height]),
    ],
  };
}

/**
 * The stock from above, its reference corner at the lower left: what is made of it shows its grain, its mark and its name;
 * offcuts are plain.
 *
 * @param factor mm on the sheet for one of wood
 */
export function laidFigure(
  { stock, parts, offcuts }: LaidStock,
  layout: StockLayout,
  units: DrawingUnits,
  factor: number,
): DrawnFigure {
  const names = new Map(layout.parts.map(({ mark, name }) => [mark, name]));
  return {
    kind: 'drawn',
    said: `How ${parts.map(({ id }) => `${id} ${names.get(id) ?? ''}`).join(', ')} lie on the stock.`,
    width: stock.length * factor,
    height: stock.width * factor,
    draw: ([x0, y0]) => {
      const boxOf = ({ x, y, length, width }: Rect): Box => ({
        minX: x0 + x * factor,
        minY: y0 + y * factor,
        maxX: x0 + (x + length) * factor,
        maxY: y0 + (y + width) * factor,
      });
      const written = (one: Rect & { readonly id: string }, name: string, box = boxOf(one)) => {
        const size = `${bareSize(one.length, units)} × ${bareSize(one.width, units)}`;
        return { one, words: pieceWords({ mark: one.id, name, size }, box) };
      };
      const made = parts.map((one) => written(one, names.get(one.id) ?? ''));
      const drawn = made.flatMap(({ one, words }): readonly SheetEntity[] => {
        const ground = groundOf(words);
        const loops = [boxOf(one), ...(ground ? [ground] : [])].map(boxLoop);
        return [
          ...(layout.grainLocked
            ? longGrain(loops, GRAIN_APART).map((points) => path('hatching', points))
            : []),
          { ...path('visible', boxLoop(boxOf(one)), true), part: one.id },
        ];
      });
      const words = made.flatMap((one) => one.words);
      const room = roomOf([...drawn, ...words]);
      const whole = boxOf({ x: 0, y: 0, length: stock.length, width: stock.width });
      // a piece too small for its mark has it beside
      const beside = made
        .filter((one) => one.words.length === 0)
        .flatMap(({ one }) => {
          const { minX, minY, maxX, maxY } = boxOf(one);
          const middle: Vec2 = [(minX + maxX) / 2, (minY + maxY) / 2];
          return labelAt(room, middle, one.id, 3, { leader: 'always', within: whole, bold: true });
        });
      const plain = offcuts.flatMap((one) => {
        const ways = regionsOf(boxOf(one)).map((box) => written(one, 'offcut', box).words);
        const best = bestPlace(
          room,
          ways.filter((way) => way.length > 0),
          (way) => groundOf(way)!,
        );
        return best ?? [];
      });
      return [path('dimension', boxLoop(whole), true), ...drawn, ...words, ...beside, ...plain];
    },
  };
}

/** Places for words in a box: the whole of it, its halves, its quarters. */
function regionsOf({ minX, minY, maxX, maxY }: Box): readonly Box[] {
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const [whole, left, right]: readonly Vec2[] = [
    [minX, maxX],
    [minX, x],
    [x, maxX],
  ];
  return [whole!, right!, left!].flatMap(([low, high]) =>
    [
      [minY, maxY],
      [y, maxY],
      [minY, y],
    ].map(([from, to]) => ({ minX: low, maxX: high, minY: from!, maxY: to! })),
  );
}

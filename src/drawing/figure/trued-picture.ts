import type { Vec2 } from '../../frame/index.js';
import type { Cut } from '../../shop/index.js';
import { BODY, boxLoop, letters, path, stroke, textWidth } from '../sheet/index.js';
import { type CutPicture, numberRing, RING } from './cut-picture.js';

/** Of the stock, mm: these pictures keep no scale. */
const MOST: Vec2 = [12, 4.4];
const LEAST = 3.4;

/** What is taken off a side, and how far a saw's line runs beyond the wood, mm. */
const OFF = 1;
const OVER = 1;

/** Between things, mm. */
const AIR = 0.7;

/** The first cuts of stock, as long as each only trims a side of what the one before left. */
export function truingCuts(cuts: readonly Cut[]): readonly Cut[] {
  const end = cuts.findIndex(({ near, far }) => !isBare(near) && !isBare(far));
  return cuts.slice(0, Math.max(0, end));
}

const isBare = ({ kind }: Cut['near']): boolean => kind === 'trimming' || kind === 'nothing';

/** Stock trued all round in one picture: each cut's number and setting on the side it trims. */
export function truedPicture(
  cuts: readonly Cut[],
  next: number,
  setting: (mm: number) => string,
): CutPicture {
  const { piece } = cuts[0]!;
  const factor = Math.min(MOST[0] / piece.length, MOST[1] / piece.width);
  const [wide, tall] = [Math.max(LEAST, piece.length * factor), Math.max(LEAST, piece.width * factor)];
  const on = { left: 0, right: 0, below: 0, above: 0 };
  const told = cuts.map((cut) => {
    const near = isBare(cut.near);
    const side = cut.direction === 'rip' ? (near ? 'below' : 'above') : near ? 'left' : 'right';
    const words = setting(cut.at);
    const width = 2 * RING + AIR + textWidth(words, BODY);
    on[side] = width;
    return { cut, side, words } as const;
  });
  const row = 2 * RING + OVER + 0.4;
  const width = on.left + on.right + wide + 2 * (AIR + OVER);
  const height = 2 * row + tall;
  return {
    width: Math.max(width, on.left + AIR + OVER + OVER + on.below + 2 * RING + 1),
    height,
    draw: ([x, y]) => {
      const [left, low] = [x + on.left + AIR + OVER, y + row];
      const [right, top] = [left + wide, low + tall];
      const lines = {
        left: [
          [left, low - OVER],
          [left, top + OVER],
        ],
        right: [
          [right, low - OVER],
          [right, top + OVER],
        ],
        below: [
          [left - OVER, low],
          [right + OVER, low],
        ],
        above: [
          [left - OVER, top],
          [right + OVER, top],
        ],
      } as const;
      const rings = {
        left: [x, (low + top) / 2],
        right: [right + OVER + AIR, (low + top) / 2],
        below: [left + OVER, y + RING],
        above: [left + OVER, top + OVER + 0.4 + RING],
      } as const;
      return [
        path(
          'hidden',
          boxLoop({ minX: left - OFF, minY: low - OFF, maxX: right + OFF, maxY: top + OFF }),
          true,
        ),
        ...told.flatMap(({ cut, side, words }) => {
          const [rx, ry] = rings[side];
          return [
            stroke('visible', ...lines[side]),
            ...numberRing('visible', [rx + RING, ry], cut.number),
            letters([rx + 2 * RING + AIR, ry - BODY / 2], words, { height: BODY }),
          ];
        }),
        ...numberRing('table', [left + OVER + on.below + 1 + RING, y + RING], next),
      ];
    },
  };
}

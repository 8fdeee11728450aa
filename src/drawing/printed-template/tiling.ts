import type { Vec2 } from '../../frame/index.js';
import { markOf } from '../../shop/index.js';
import type { Box, Orientation } from '../sheet/index.js';
import { seamsAlong } from './seams.js';

/** What a tile can show on both papers, mm: the common live area less a footer of 14 mm. */
export const TILE_WINDOW: Readonly<Record<Orientation, readonly [width: number, height: number]>> = {
  portrait: [190, 245.4],
  landscape: [259.4, 176],
};

/** Neighbouring tiles show this much of the drawing twice; the seam runs in the middle of it, mm. */
export const OVERLAP = 10;

/** A sheet of a tiled drawing. */
export interface Tile {
  readonly row: number;
  readonly column: number;
  /** Of the printed ones, row by row from the top left, from 1; undefined for a blank one, which is not printed. */
  readonly number: number | undefined;
  /** Between the seams: what is left of it when it is cut. Coordinates of the drawing, mm. */
  readonly frame: Box;
  /** What it shows: half the overlap more on every side. */
  readonly shown: Box;
}

/** A cross in a ring that stands on a seam and is printed on the sheets on both sides of it. */
export interface MatchMark {
  /** `J1a` and `J1b` on one seam. */
  readonly name: string;
  readonly at: Vec2;
  /** Numbers of the two sheets. */
  readonly sheets: readonly [number, number];
}

/** How a drawing is cut into sheets; the same for both papers. */
export interface TilePlan {
  readonly orientation: Orientation;
  readonly rows: number;
  readonly columns: number;
  /** Row by row from the top left, blank ones too. */
  readonly tiles: readonly Tile[];
  readonly marks: readonly MatchMark[];
}

/** What is tiled. mm */
export interface Tiled {
  readonly box: Box;
  /** Seams keep off these. */
  readonly avoid: readonly Box[];
  /** Whether something is drawn in a box; a sheet without is not printed. */
  readonly inked: (box: Box) => boolean;
  /** Whether a match mark would cover words there. */
  readonly worded: (box: Box) => boolean;
}

/** The plan with the fewest sheets, portrait when both take as many. */
export function tilePlan(tiled: Tiled): TilePlan {
  const [portrait, landscape] = (['portrait', 'landscape'] as const).map((way) => planned(tiled, way));
  return sheetsOf(landscape!) < sheetsOf(portrait!) ? landscape! : portrait!;
}

const sheetsOf = ({ tiles }: TilePlan): number => tiles.filter(({ number }) => number !== undefined).length;

function planned({ box, avoid, inked, worded }: Tiled, orientation: Orientation): TilePlan {
  const [width, height] = TILE_WINDOW[orientation];
  const xs = seamsAlong(
    box.minX,
    box.maxX,
    width - OVERLAP,
    avoid.map(({ minX, maxX }) => [minX, maxX]),
  );
  const ys = seamsAlong(
    box.minY,
    box.maxY,
    height - OVERLAP,
    avoid.map(({ minY, maxY }) => [minY, maxY]),
  );
  const [columns, rows] = [xs.length - 1, ys.length - 1];
  let count = 0;
  const tiles = Array.from({ length: rows * columns }, (_, i): Tile => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const frame: Box = {
      minX: xs[column]!,
      maxX: xs[column + 1]!,
      minY: ys[rows - row - 1]!,
      maxY: ys[rows - row]!,
    };
    const half = OVERLAP / 2;
    const shown: Box = {
      minX: frame.minX - half,
      maxX: frame.maxX + half,
      minY: frame.minY - half,
      maxY: frame.maxY + half,
    };
    if (inked(frame)) count += 1;
    return { row, column, number: inked(frame) ? count : undefined, frame, shown };
  });
  return { orientation, rows, columns, tiles, marks: marksOf(tiles, (one) => inked(one) || worded(one)) };
}

/** Where along a seam its two marks may stand, the best places first. */
const MARK_PLACES = [
  [0.25, 0.21, 0.29, 0.17, 0.33, 0.13, 0.37, 0.41],
  [0.75, 0.79, 0.71, 0.83, 0.67, 0.87, 0.63, 0.59],
] as const;

/** Kept free round a mark where there is room, mm. */
const MARK_ROOM = 5;

/** Two marks on every seam between two printed sheets, near a quarter and three quarters of it, off what is drawn. */
function marksOf(tiles: readonly Tile[], taken: (box: Box) => boolean): readonly MatchMark[] {
  const free = ([x, y]: Vec2): boolean =>
    !taken({ minX: x - MARK_ROOM, maxX: x + MARK_ROOM, minY: y - MARK_ROOM, maxY: y + MARK_ROOM });
  const seams = tiles.flatMap((tile) => {
    const beside = tiles.find(({ row, column }) => row === tile.row && column === tile.column + 1);
    const below = tiles.find(({ row, column }) => row === tile.row + 1 && column === tile.column);
    const { minX, maxX, minY, maxY } = tile.frame;
    return [
      { other: beside, at: (t: number): Vec2 => [maxX, maxY + (minY - maxY) * t] },
      { other: below, at: (t: number): Vec2 => [minX + (maxX - minX) * t, minY] },
    ].flatMap(({ other, at }) =>
      tile.number === undefined || other?.number === undefined
        ? []
        : [{ sheets: [tile.number, other.number] as const, at }],
    );
  });
  return seams.flatMap(({ sheets, at }, i) =>
    MARK_PLACES.map((places, k): MatchMark => {
      const t = places.find((one) => free(at(one))) ?? places[0];
      return { name: `${markOf('seam cross', i)}${k === 0 ? 'a' : 'b'}`, at: at(t), sheets };
    }),
  );
}

import type { Vec2 } from '../frame/index.js';
import type { Orientation } from './page.js';
import { seamsAlong } from './seams.js';
import type { Box } from './text-width.js';

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
  /** `A1` and `A2` on one seam. */
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

/** What is tiled: its box in mm, places that seams keep off, and whether something is drawn in a box. */
export interface Tiled {
  readonly box: Box;
  readonly avoid: readonly Box[];
  readonly inked: (box: Box) => boolean;
}

/** The plan with the fewest sheets, portrait when both take as many. */
export function tilePlan(tiled: Tiled): TilePlan {
  const [portrait, landscape] = (['portrait', 'landscape'] as const).map((way) => planned(tiled, way));
  return sheetsOf(landscape!) < sheetsOf(portrait!) ? landscape! : portrait!;
}

const sheetsOf = ({ tiles }: TilePlan): number => tiles.filter(({ number }) => number !== undefined).length;

function planned({ box, avoid, inked }: Tiled, orientation: Orientation): TilePlan {
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
  return { orientation, rows, columns, tiles, marks: marksOf(tiles) };
}

/** Two marks on every seam between two printed sheets, at a quarter and three quarters of it. */
function marksOf(tiles: readonly Tile[]): readonly MatchMark[] {
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
    [0.25, 0.75].map((t, k): MatchMark => ({ name: `${letterOf(i)}${k + 1}`, at: at(t), sheets })),
  );
}

/** A … Z, AA, AB … */
const letterOf = (i: number): string =>
  (i < 26 ? '' : String.fromCharCode(64 + Math.floor(i / 26))) + String.fromCharCode(65 + (i % 26));

import type { Vec2 } from '../../frame/index.js';
import { bestPlace, disc, letters, roomOf, SMALL, type Stroke, stroke, textBox } from '../sheet/index.js';
import type { Tile, TilePlan } from './tiling.js';

/** Radius of a match mark's ring and reach of its cross, mm. */
const RING = 3.2;
const CROSS = 4.6;

/** Seams to printed neighbours as lines to cut, with their match marks and where they lead. */
export function tileSeams(
  { tiles, marks }: TilePlan,
  tile: Tile,
  drawn: readonly Stroke[],
): readonly Stroke[] {
  const { frame, shown } = tile;
  const rings = marks
    .filter(({ sheets }) => sheets.some((number) => number === tile.number))
    .flatMap(({ name, at: [x, y] }): Stroke[] => [
      disc('dimension', [x, y], RING),
      stroke('dimension', [x - CROSS, y], [x + CROSS, y]),
      stroke('dimension', [x, y - CROSS], [x, y + CROSS]),
      ...nameBeside(name, [x, y], tile),
    ]);
  const room = roomOf([...drawn, ...rings]);
  const sides = [
    { row: 0, column: -1, upright: true, at: frame.minX, inwards: 1 },
    { row: 0, column: 1, upright: true, at: frame.maxX, inwards: -1 },
    { row: -1, column: 0, upright: false, at: frame.maxY, inwards: -1 },
    { row: 1, column: 0, upright: false, at: frame.minY, inwards: 1 },
  ];
  const lines = sides.flatMap(({ row, column, upright, at, inwards }): Stroke[] => {
    const to = tiles.find((one) => one.row === tile.row + row && one.column === tile.column + column)?.number;
    if (to === undefined) return [];
    const point = (along: number, across: number): Vec2 => (upright ? [across, along] : [along, across]);
    const [low, high] = upright ? [shown.minY, shown.maxY] : [shown.minX, shown.maxX];
    // letters stand on the side that stays; those of an upright seam read from the right
    const foot = at + inwards * 1 + (inwards === (upright ? 1 : -1) ? inwards * SMALL : 0);
    const words = [0.5, 0.45, 0.55, 0.4, 0.6, 0.35, 0.65, 0.15, 0.85].map((t) =>
      letters(point(low + (high - low) * t, foot), `seam to sheet ${to}`, {
        anchor: 'middle',
        rotationDeg: upright ? 90 : 0,
      }),
    );
    const best = bestPlace(room, words, textBox) ?? words[0]!;
    room.claim(textBox(best));
    return [stroke('hidden', point(low, at), point(high, at)), best];
  });
  return [...rings, ...lines];
}

/** A mark's letters on the side of the seam that stays when the sheet is cut. */
function nameBeside(name: string, [x, y]: Vec2, { frame }: Tile): readonly Stroke[] {
  if (Math.abs(x - frame.minX) < 1e-6) return [letters([x + CROSS + 0.5, y + 1], name, { bold: true })];
  if (Math.abs(x - frame.maxX) < 1e-6)
    return [letters([x - CROSS - 0.5, y + 1], name, { bold: true, anchor: 'end' })];
  const up = Math.abs(y - frame.minY) < 1e-6;
  return [letters([x + 1, up ? y + CROSS + 0.5 : y - CROSS - 0.5 - SMALL], name, { bold: true })];
}

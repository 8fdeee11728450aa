import type { Vec2 } from '../../frame/index.js';
import type { SetupCard } from '../../shop/index.js';
import { chainRow, type RowPlace, rowBeside } from '../dimension/index.js';
import type { Dimension, DrawingUnits } from '../sheet/index.js';
import type { OnSheet } from './set-up-shapes.js';
import type { SetUpSize } from './set-up-size.js';

/** What is set along the mortise, and a guide's edge; how rails stand to the cutter the section tells. */
export function setUpDimensions(
  card: SetupCard,
  { low, high, reach }: SetUpSize,
  { at }: OnSheet,
  units: DrawingUnits,
): readonly Dimension[] {
  const [[minX, minY], [maxX, maxY]] = [at(-reach, -low), at(reach, high)];
  const border = { minX, maxX, minY, maxY };
  const across = (value: number, what: string) => {
    const row = rowBeside(border, 'right');
    return single(row, value, what, (y) => row.at(at(0, y)[1], -1), units);
  };
  const along = (value: number, what: string) =>
    single(rowBeside(border, 'below'), value, what, (x) => at(x, -low), units);
  const ends = [-1, 1].map((side) => {
    const value = (side * card.mortiseLength) / 2;
    return { value, what: 'end of the mortise', point: at(value, high) };
  });
  const { guideOffset, stopDistance } = card;
  return [
    ...(guideOffset === undefined ? [] : across(guideOffset, "guide board's edge")),
    ...(card.window ? [] : [...along(-stopDistance, 'left stop'), ...along(stopDistance, 'right stop')]),
    ...chainRow(rowBeside(border, 'above'), 5, ends, units).dimensions,
  ];
}

/** One distance from the cutter's centre: each is set by itself and is rounded by itself, so that it reads as on its card. */
function single(
  place: RowPlace,
  value: number,
  what: string,
  pointAt: (value: number) => Vec2,
  units: DrawingUnits,
): readonly Dimension[] {
  const [low, high] = [Math.min(0, value), Math.max(0, value)];
  const stops = [
    { value: 0, what: 'cutter', point: pointAt(low) },
    { value: high - low, what, point: pointAt(high) },
  ];
  return chainRow(place, 6, stops, units).dimensions;
}

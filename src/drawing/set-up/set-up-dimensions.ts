import { forRouter } from '../../length/index.js';
import type { SetupCard } from '../../shop/index.js';
import { chainRow, type RowPlace, rowBeside } from '../dimension/index.js';
import type { Dimension, DrawingUnits, Stop } from '../sheet/index.js';
import type { OnSheet } from './set-up-shapes.js';
import type { SetUpSize } from './set-up-size.js';

/**
 * What is set along the mortise, and a guide's edge, from the cutter's centre, each rounded by itself so that it reads as on its
 * card; how rails stand to the cutter the section tells.
 */
export function setUpDimensions(
  card: SetupCard,
  { low, high, reach }: SetUpSize,
  { at }: OnSheet,
  units: DrawingUnits,
): readonly Dimension[] {
  const [[minX, minY], [maxX, maxY]] = [at(-reach, -low), at(reach, high)];
  const border = { minX, maxX, minY, maxY };
  const row = rowBeside(border, 'right');
  const fromCutter = (place: RowPlace, stops: readonly Stop[]) =>
    chainRow(place, 6, stops, forRouter(units), 'each by itself').dimensions;
  const ends = [-1, 1].map((side) => {
    const value = (side * card.mortiseLength) / 2;
    return { value, what: 'end of the mortise', point: at(value, high) };
  });
  const { guideOffset, stopDistance } = card;
  return [
    ...(guideOffset === undefined
      ? []
      : fromCutter(row, [
          { value: 0, what: 'cutter', point: row.at(at(0, Math.min(0, guideOffset))[1], -1) },
          {
            value: Math.abs(guideOffset),
            what: "guide board's edge",
            point: row.at(at(0, Math.max(0, guideOffset))[1], -1),
          },
        ])),
    ...(card.window
      ? []
      : fromCutter(
          rowBeside(border, 'below'),
          [
            [-stopDistance, 'left stop'] as const,
            [0, 'cutter'] as const,
            [stopDistance, 'right stop'] as const,
          ].map(([value, what]) => ({ value, what, point: at(value, -low) })),
        )),
    ...chainRow(rowBeside(border, 'above'), 5, ends, units).dimensions,
  ];
}

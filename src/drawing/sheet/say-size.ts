import { printLength } from '../../length/index.js';
import { type DrawingUnits, dimensionRows } from './drawing-units.js';
import { STEP } from './running-steps.js';

/** A length as the drawings print it, with its unit when they print one system. */
export const sizeWords = (mm: number, units: DrawingUnits): string =>
  units === 'in'
    ? printLength(mm, { units: 'in' })
    : dimensionRows({ mm: Math.round(mm / STEP.mm), in: Math.round(mm / STEP.in) }, units)
        .map((row, i) => (i === 0 ? `${row} mm` : row))
        .join(' ');

/** A length on a small picture whose unit stands elsewhere: mm where both systems are asked for. */
export const bareSize = (mm: number, units: DrawingUnits): string =>
  dimensionRows({ mm: Math.round(mm / STEP.mm), in: Math.round(mm / STEP.in) }, units)[0]!;

export type Say = (mm: number) => string;

/** How a length stands in the tables of a plan. */
export const sayIn =
  (units: DrawingUnits): Say =>
  (mm) =>
    sizeWords(mm, units);

interface Sizes {
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
}

/** `28 × 240 × 420 mm [1-7/64" × 9-29/64" × 16-17/32"]` */
export const blankWords = ({ thickness, width, length }: Sizes, units: DrawingUnits): string => {
  const rows = [thickness, width, length].map((mm) =>
    dimensionRows({ mm: Math.round(mm / STEP.mm), in: Math.round(mm / STEP.in) }, units),
  );
  const joined = (i: number) => rows.map((row) => row[i]!.replace(/[[\]]/g, '')).join(' × ');
  if (units === 'in') return joined(0);
  return units === 'mm' ? `${joined(0)} mm` : `${joined(0)} mm [${joined(1)}]`;
};

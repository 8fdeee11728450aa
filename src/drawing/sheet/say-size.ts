import { soldInInches, systemOf, trimmed } from '../../length/index.js';
import { type DrawingUnits, sizeRows, toolRows } from './drawing-units.js';

/** A length as the drawings print it, with its unit when they print one system. */
export const sizeWords = (mm: number, units: DrawingUnits): string => withUnit(sizeRows(mm, units), units);

const withUnit = (rows: readonly string[], units: DrawingUnits): string =>
  rows.map((row, i) => (i === 0 && systemOf(units) !== 'in' ? `${row} mm` : row)).join(' ');

/** A length on a small picture whose unit stands elsewhere: mm where both systems are asked for. */
export const bareSize = (mm: number, units: DrawingUnits): string => sizeRows(mm, units)[0]!;

export type Say = (mm: number) => string;

/** How a length stands in the tables of a plan. */
export const sayIn =
  (units: DrawingUnits): Say =>
  (mm) =>
    sizeWords(mm, units);

/** How a cutter, a drill or a bush to buy stands there; in inches, one that is sold in mm says so. */
export const sayTool =
  (units: DrawingUnits): Say =>
  (mm) => {
    const words = withUnit(toolRows(mm, units), units);
    return systemOf(units) === 'in' && !soldInInches(mm) ? `${words} (${trimmed(mm, 1)} mm)` : words;
  };

interface Sizes {
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
}

/** `28 × 240 × 420 mm [1-1/8" × 9-7/16" × 16-17/32"]` */
export const blankWords = ({ thickness, width, length }: Sizes, units: DrawingUnits): string => {
  const rows = [thickness, width, length].map((mm) => sizeRows(mm, units));
  const joined = (i: number) => rows.map((row) => row[i]!.replace(/[[\]]/g, '')).join(' × ');
  const system = systemOf(units);
  if (system === 'in') return joined(0);
  return system === 'mm' ? `${joined(0)} mm` : `${joined(0)} mm [${joined(1)}]`;
};

import { INCH } from '../length/index.js';

/** A table's length in mm; published inch tables are kept in inches. Ten times an inch is whole, so 3/8 in is 9.525 mm to the last bit. */
export const inMm = (value: number, unit: string): number =>
  unit === 'in' ? (value * (INCH * 10)) / 10 : value;

import { printLength } from '../../length/index.js';

/** A length in mm and in inches to the nearest 64th, with what is left over: `57.7 mm = 2-17/64" (+0.11 mm)`. */
export const inBoth = (mm: number): string =>
  `${printLength(mm, { units: 'mm' })} = ${printLength(mm, { units: 'in' })}`;

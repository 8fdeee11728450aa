import { printLength } from '../../length/index.js';

/** A length in mm and in inches: `57.7 mm = 2-9/32"`. */
export const inBoth = (mm: number): string =>
  `${printLength(mm, { units: 'mm' })} = ${printLength(mm, { units: 'in' })}`;

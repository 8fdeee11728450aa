import { printLength } from '../../length/index.js';

/** A length in mm and in inches to the nearest 64th: `57.7 mm = 2-17/64"`. */
export const inBoth = (mm: number): string =>
  `${printLength(mm, { units: 'mm' })} = ${printLength(mm, { units: 'in' })}`;

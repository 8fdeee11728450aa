import { type DrawingUnits, INCH, systemOf } from '../../length/index.js';

/** A line of a length a person can measure on the print: 100 mm, or 4 inches for who has a rule in inches. */
export const checkBar = (units: DrawingUnits): { readonly length: number; readonly words: string } =>
  systemOf(units) === 'in' ? { length: 4 * INCH, words: '4"' } : { length: 100, words: '100 mm' };

import { printFine, printTool, soldInInches, trimmed } from '../../src/length/index.js';
import type { ThreadSystem } from '../../src/tables/index.js';

/** A length as it is asked for over the counter: a bare number of mm, or inches with their mark. */
export const length = (mm: number, system: ThreadSystem): string =>
  system === 'metric' ? trimmed(mm, 1) : printFine(mm, { units: 'in' });

/** A cutter as it is sold: by a fraction of an inch where its diameter is one, else in mm. */
export const soldAs = (mm: number): string =>
  soldInInches(mm) ? printTool(mm, { units: 'in' }) : `${trimmed(mm, 1)} mm`;

import { TenonwrightError } from '../errors.js';
import { Problem } from './problem.js';
import type { Place } from './told.js';

/** Does what a line asks for; what the engine refuses is led back to that line. @throws Problem */
export function atLine<T>(at: Place, length: number, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof Problem || !(error instanceof TenonwrightError)) throw error;
    throw new Problem(at, length, (say) => error.explain(say));
  }
}

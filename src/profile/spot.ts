import type { Voice } from '../errors.js';
import type { Vec2 } from '../frame/index.js';

/** A point in the text of an error. */
export const spot = (say: Voice, [x, y]: Vec2): string => `(${say.fine(x)}, ${say.fine(y)})`;

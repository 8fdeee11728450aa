import type { Vec2 } from '../frame/index.js';

/** A length in the text of an error: at most three decimals, with its unit. */
export const mm = (value: number): string => `${Number(value.toFixed(3))} mm`;

/** A point in the text of an error. */
export const spot = ([x, y]: Vec2): string => `(${Number(x.toFixed(3))}, ${Number(y.toFixed(3))})`;

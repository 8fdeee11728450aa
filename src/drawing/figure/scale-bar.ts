import type { DrawnFigure } from '../flow/index.js';
import { stroke } from '../sheet/index.js';

const END = 1.5;

/** A bar of a length with a stroke at each end. mm */
export const scaleBar = (length: number): DrawnFigure => ({
  kind: 'drawn',
  said: 'A bar to hold a rule against.',
  width: length,
  height: 2 * END,
  draw: ([x, y]) => [
    stroke('dimension', [x, y + END], [x + length, y + END]),
    stroke('dimension', [x, y], [x, y + 2 * END]),
    stroke('dimension', [x + length, y], [x + length, y + 2 * END]),
  ],
});

export { type Dimension, dimensionOf } from './dimension.js';
export { type Known, knownFrom, startOf, type WorkedOut } from './known.js';
export { holdMusts } from './musts.js';

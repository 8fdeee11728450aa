export type { Bench, Check, FigureBench } from './bench.js';
export { located } from './located.js';
export { gapBetween, type Piece, pushed, sharedBy } from './piece-in-place.js';
export { type Held, type SetUp, setUpsOnSolids } from './set-up-on-solids.js';
export { type Sweep, sweptBound } from './swept-bound.js';

export * from './board.js';
export * from './faces.js';
export { fromDistances, type Mirror } from './hole-distances.js';
export { boltCircle, fromPoints, type HolePattern } from './hole-pattern.js';
export * from './make-board.js';
export * from './plane-region.js';
export * from './volume.js';

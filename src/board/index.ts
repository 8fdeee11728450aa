export * from './board.js';
export * from './faces.js';
export * from './follower.js';
export { fromDistances, type Mirror } from './hole-distances.js';
export { boltCircle, fromPoints, type HolePattern } from './hole-pattern.js';
export * from './make-board.js';
export * from './plane-region.js';
export * from './tight-template-corners.js';
export * from './volume.js';

export type { Assumed } from './hole-centre.js';
export { fromDistances, type Mirror } from './hole-distances.js';
export { boltCircle, fromPoints, type HolePattern } from './hole-pattern.js';

export { designOf, type PieceValues, type StoodPiece, standPiece } from './design-of.js';
export { HELD_KEYS } from './held.js';
export { JOINT_KEYS } from './join-options.js';

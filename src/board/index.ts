export * from './board.js';
export * from './faces.js';
export * from './follower.js';
export * from './make-board.js';
export * from './mouth.js';
export * from './plane-region.js';
export * from './tight-template-corners.js';
export * from './volume.js';

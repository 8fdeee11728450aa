export * from './board.js';
export * from './faces.js';
export * from './make-board.js';
export * from './plane-region.js';

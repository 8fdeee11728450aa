export * from './board-body.js';
export * from './cavity.js';
export * from './joint-measures.js';
export * from './kernel.js';
export * from './measure.js';
export * from './mesh.js';
export * from './solids.js';

export * from './beam.js';
export * from './portal.js';
export * from './reductions.js';
export * from './space-frame.js';
export * from './tenon.js';
export * from './tipping.js';
export * from './weight.js';
export * from './wood.js';

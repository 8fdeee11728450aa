export * from './problem.js';
export * from './told.js';
export * from './tree.js';

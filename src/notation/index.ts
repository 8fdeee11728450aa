export * from './told.js';
export * from './tree.js';

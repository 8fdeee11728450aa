export * from './frame.js';
export * from './vec.js';

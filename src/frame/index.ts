export * from './frame.js';
export * from './lean.js';
export * from './plane.js';
export * from './settled-figures.js';
export * from './vec.js';

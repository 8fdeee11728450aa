export * from './moisture.js';
export * from './movement.js';

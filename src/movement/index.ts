export * from './moisture.js';
export * from './movement.js';
export * from './seasonal.js';

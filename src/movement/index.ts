export * from './moisture.js';
export * from './movement.js';
export * from './season.js';
export * from './seasonal.js';
export * from './strain.js';

export * from './assemble.js';
export * from './design.js';
export * from './explode.js';
export * from './mechanism.js';

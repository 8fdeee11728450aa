export * from './assemble.js';
export * from './design.js';
export * from './explode.js';
export * from './leg-between.js';
export * from './mechanism.js';
export * from './mirrored.js';
export * from './repeated.js';
export * from './trimmed.js';

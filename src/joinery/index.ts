export { type AxisConsequence, type AxisOption, axisConsequence } from './axis.js';
export * from './contact.js';
export * from './join.js';
export * from './joint.js';
export type { JoinOptions } from './options.js';
export { PRACTICE } from './practice.js';

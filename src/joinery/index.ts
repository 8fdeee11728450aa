export type { AxisOption } from './axis.js';
export * from './contact.js';
export { tenonShare } from './draft.js';
export { SWELL_SPARE } from './edge-clearance.js';
export * from './join.js';
export * from './joint.js';
export type { JoinOptions, Meet, WoodTold } from './options.js';
export { PRACTICE } from './practice.js';

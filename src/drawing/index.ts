export { lineInside } from './line-inside.js';
export * from './template.js';
export type { Follower } from './template-line.js';
export { type TemplateOptions, templateOf } from './template-of.js';
export * from './tight-template-corners.js';

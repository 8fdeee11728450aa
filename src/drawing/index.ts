export { lineInside } from './line-inside.js';
export * from './template.js';

export { type TemplateOptions, templateOf } from './template-of.js';

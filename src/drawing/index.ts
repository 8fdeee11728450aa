export { lineInside } from './line-inside.js';
export { LINE_KINDS, type LineKind } from './line-kinds.js';
export type { SeenPart, Wire } from './seen-part.js';
export * from './sheet.js';
export * from './template.js';
export { type TemplateOptions, templateOf } from './template-of.js';
export { type View, type ViewLine, viewOf } from './view.js';
export { lookingFrom, VIEW_FRAMES, type ViewName } from './view-frames.js';
export { type Colour, colourOf, woodColour } from './colours.js';

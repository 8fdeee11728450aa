export { besideText } from './beside-text.js';
export { withCaption } from './composed.js';
export { type DrawnFigure, type FlowBlock, told, type Whole } from './drawn-figure.js';
export { figureRows } from './figure-row.js';
export { type Flowed, flow, heightOf, stacked, together } from './flow.js';

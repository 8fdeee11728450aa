export type { DrawnFigure, FlowBlock } from './drawn-figure.js';
export { figureRows } from './figure-row.js';
export { type Flowed, flow } from './flow.js';

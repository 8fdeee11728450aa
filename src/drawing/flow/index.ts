export { figureRows } from './figure-row.js';
export { type Flowed, flow } from './flow.js';
export { type Block, bullet, type FigureBlock, heading, paragraph, tableBlock } from './flow-block.js';
export { blocksOf, sectionsOf } from './prose.js';

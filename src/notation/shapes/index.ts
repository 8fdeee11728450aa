export { SHAPE_KEYS, shapeBoard } from './shape-board.js';

export { boardDrawing, type DrawingOptions, drawableOf } from './board-drawing.js';
export { type MarkedFeature, markedFeatures } from './board-features.js';
export { featureTable } from './feature-table.js';

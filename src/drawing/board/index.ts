export { type MarkedFeature, markedFeatures } from './board-features.js';
export { boardFigure, type DrawingOptions, type ScaledFigure } from './board-drawing.js';
export { featureTable } from './feature-table.js';

export { boardFigure, type DrawingOptions, type ScaledFigure } from './board-drawing.js';
export { type MarkedFeature, markedFeatures } from './board-features.js';
export { featureTable } from './feature-table.js';

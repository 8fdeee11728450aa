export { boardFigure, type DrawingOptions } from './board-drawing.js';
export { type MarkedFeature, markedFeatures } from './board-features.js';
export { featureTable } from './feature-table.js';
export { largestFigure, type ScaledFigure } from './scaled-figure.js';

export { boardFigure, type DrawingOptions } from './board-drawing.js';
export { type MarkedFeature, markedFeatures } from './board-features.js';
export { featureTable } from './feature-table.js';
export { laidOutWhole, type Scalable, type ScaledFigure, scalable } from './scaled-figure.js';

export { inFile, oneRow, rounded } from './dxf-number.js';
export { COLOURS, type DxfScale, dxfScale, LINE_TYPES } from './dxf-scale.js';
export { dxfBytes, emptyDrawing } from './empty-drawing.js';

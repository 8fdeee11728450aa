export { drawingDxf } from './drawing-dxf.js';

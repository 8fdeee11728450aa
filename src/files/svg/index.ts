export { sheetSvg } from './sheet-svg.js';
export { svgDocument, svgNumber, svgText } from './svg.js';
export { viewSvg } from './view-svg.js';

export type { SectionPlane } from './cap.js';
export { type Arrangement, arrangePieces, boxOf, lightPieces, pieceMet, visibleBox } from './pieces-shown.js';
export { sectionThrough } from './section.js';
export { isSamePiece, type ShownPiece, shownPiece } from './shown-piece.js';
export { type Spot, spotUnder } from './snapping.js';

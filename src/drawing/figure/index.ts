export { assemblyDrawing } from './assembly-drawing.js';
export { barFigure } from './bar-figure.js';
export { cardFigure } from './card-figure.js';
export { clampFigure } from './clamp-figure.js';
export { feetFigure } from './feet-figure.js';
export { glueFigure } from './glue-figure.js';
export { type JointKind, jointDetail, jointKinds } from './joint-detail.js';
export { layoutFigure } from './layout-figure.js';
export { markingFigure } from './marking-figure.js';
export { type ListedPart, partsList, partsTable } from './parts-list.js';
export {
  explodedSheet,
  explodedView,
  isometricView,
  pictureSheets,
  seenParts,
} from './picture.js';
export { rangeBars, rangeMap } from './range-figure.js';

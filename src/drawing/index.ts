export { assemblyDrawing } from './assembly-drawing.js';
export { boardDrawing, type DrawingOptions, drawableOf } from './board-drawing.js';
export { type MarkedFeature, markedFeatures } from './board-features.js';
export { type Colour, colourOf, woodColour } from './colours.js';
export { type Downhill, downhillOf } from './downhill.js';
export type { DrawingUnits } from './drawing-units.js';
export { entitiesBox } from './entity-box.js';
export { type JointKind, jointDetail, jointKinds } from './joint-detail.js';
export { lineInside } from './line-inside.js';
export { LINE_KINDS, type LineKind } from './line-kinds.js';
export { type Orientation, type Page, type Paper, pageOf } from './page.js';
export { type ListedPart, partsList, partsTable } from './parts-list.js';
export { explodedView, isometricView, pictureSheets, seenParts, tenonAxes } from './picture.js';
export { viewBox, viewLines } from './placed-view.js';
export { type PlanEntry, type PlanSet, planSheets, planTemplates } from './plan.js';
export { type PlanContent, planContent } from './plan-content.js';
export type { PlanParts } from './plan-parts.js';
export { templatesOf } from './plan-templates.js';
export { type PrintScale, parsePrintScale, printScaleWords } from './print-scale.js';
export type { Projection } from './projection-symbol.js';
export { type Section, sectionEntities, sectionOf } from './section-view.js';
export type { SeenPart, Wire } from './seen-part.js';
export * from './sheet.js';
export { columnWidths, tableAt } from './table.js';
export * from './template.js';
export { type ArtworkOptions, type TemplateArtwork, templateArtwork } from './template-artwork.js';
export type { KeyDimension } from './template-keys.js';
export { type TemplateOptions, templateOf } from './template-of.js';
export { type TemplatePlace, templatePlaces } from './template-places.js';
export { type Box, boxesOverlap, textBox, textWidth } from './text-width.js';
export type { TilePaper } from './tile-footer.js';
export { type TiledTemplate, tiledTemplate, tileSheets } from './tile-sheets.js';
export {
  type MatchMark,
  OVERLAP,
  TILE_WINDOW,
  type Tile,
  type Tiled,
  type TilePlan,
  tilePlan,
} from './tiling.js';
export { BLOCK_HEIGHT, type Draft, finishSheets, type SheetSet } from './title-block.js';
export { type View, type ViewLine, viewOf } from './view.js';
export { lookingFrom, VIEW_FRAMES, type ViewName } from './view-frames.js';

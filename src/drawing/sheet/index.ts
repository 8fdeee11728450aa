export { checkBar } from './check-bar.js';
export { clipped, pieceInside } from './clip.js';
export { type Colour, colourOf, hasGrain, shaded } from './colours.js';
export { arrowHead, BODY, disc, letters, path, SMALL, stroke, tagged } from './draw.js';
export { type DrawingUnits, dimensionRows, fitRows, sizeRows, toolRows } from './drawing-units.js';
export { entitiesBox } from './entity-box.js';
export { hatchOf } from './hatch.js';
export { clearOfLines, labelAt } from './label.js';
export { GRAIN, LINE_KINDS, type LineKind } from './line-kinds.js';
export { moved, movedEntities } from './moved.js';
export { BLOCK_HEIGHT, drawableOf, type Orientation, type Page, type Paper, pageOf } from './page.js';
export { type PrintScale, parsePrintScale, printScaleWords } from './print-scale.js';
export type { Projection } from './projection-symbol.js';
export { bestPlace, emptyRoom, type Room } from './room.js';
export { roomOf } from './room-of.js';
export { rule } from './rule.js';
export { printSteps, runningSteps } from './running-steps.js';
export { bareSize, blankWords, sayIn, sayTool, sizeWords } from './say-size.js';
export { SCALES, type Scale } from './scales.js';
export { withBody } from './shared-body.js';
export {
  type ArcStroke,
  type CircleStroke,
  type Dimension,
  type Fill,
  type Hatch,
  type LineStroke,
  type PolylineStroke,
  type SharedBody,
  type Sheet,
  type SheetEntity,
  type Stroke,
  strokesOf,
  type Table,
  type Tag,
  type TextHeight,
  type TextStroke,
  type Tone,
} from './sheet.js';
export { spread } from './spread.js';
export { inOrder, type Stop } from './stop.js';
export { type Box, boxesOverlap, boxInside, boxLoop, fittedText, textBox, textWidth } from './text-width.js';
export { type Draft, finishSheets, type SheetSet, stampOver } from './title-block.js';
export { drawnTable, type WrappedRow, type WrappedTable, wrappedTable } from './wrapped-table.js';
export { wrappedText } from './wrapped-text.js';

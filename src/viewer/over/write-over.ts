import type { Point, PreviewStanding } from '../told/index.js';
import type { BoxTold } from './boxes-told.js';
import { crossAt, ring, type Span, span, spot, standing } from './over-marks.js';
import type { Pixel } from './over-sheet.js';
import { sizeLines } from './size-lines.js';

/** What is written over the picture. */
export interface Written {
  readonly boxes: readonly BoxTold[];
  readonly stands: PreviewStanding | undefined;
  /** Places that are pointed at. */
  readonly marks: readonly Point[];
  readonly spans: readonly Span[];
  /** Small rings round spots that are measured, and where the cross is that keys move. */
  readonly spots: readonly Point[];
  readonly cross: Pixel | undefined;
}

/** Writes sizes, ways and marks over the picture. */
export function writeOver(
  sheet: SVGSVGElement,
  { boxes, stands, marks, spans, spots, cross }: Written,
  pixel: (at: Point) => Pixel,
): void {
  sheet.replaceChildren();
  // printed or saved at another size, it still lies over the picture
  sheet.setAttribute('viewBox', `0 0 ${sheet.clientWidth} ${sheet.clientHeight}`);
  sizeLines(sheet, boxes, pixel);
  if (stands) standing(sheet, stands, pixel);
  for (const mark of marks) ring(sheet, pixel(mark), spans.length > 0);
  for (const one of spans) span(sheet, one, pixel);
  for (const one of spots) spot(sheet, pixel(one));
  if (cross) crossAt(sheet, cross);
}

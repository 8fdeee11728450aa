import type { BoxTold } from './boxes-told.js';
import { ring, type Span, span, standing } from './over-marks.js';
import type { Pixel } from './over-sheet.js';
import type { Point, PreviewStanding } from './preview-data.js';
import { sizeLines } from './size-lines.js';

/** What is written over the picture. */
export interface Written {
  readonly boxes: readonly BoxTold[];
  readonly stands: PreviewStanding | undefined;
  /** Places that are pointed at. */
  readonly marks: readonly Point[];
  readonly spans: readonly Span[];
}

/** Writes sizes, ways and marks over the picture. */
export function writeOver(
  sheet: SVGSVGElement,
  { boxes, stands, marks, spans }: Written,
  pixel: (at: Point) => Pixel,
): void {
  sheet.replaceChildren();
  sizeLines(sheet, boxes, pixel);
  if (stands) standing(sheet, stands, pixel);
  for (const mark of marks) ring(sheet, pixel(mark));
  for (const one of spans) span(sheet, one, pixel);
}

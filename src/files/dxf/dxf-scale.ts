import type { Dashing, Layer } from '../../drawing/index.js';
import { INCH, type Units } from '../../length/index.js';

/** The unit of a template's file. */
export interface DxfScale {
  /** File units to the millimetre. */
  readonly perMm: number;
  /** `$INSUNITS`: 4 mm, 1 inch (DXF Reference, HEADER variables). */
  readonly insunits: 4 | 1;
  /** `$MEASUREMENT`: 1 metric, 0 English. */
  readonly measurement: 1 | 0;
}

/** A file in millimetres or inches. */
export const dxfScale = (units: Units): DxfScale =>
  units === 'mm'
    ? { perMm: 1, insunits: 4, measurement: 1 }
    : { perMm: 1 / INCH, insunits: 1, measurement: 0 };

/** Colour of each layer by its index; what a layer is for is told by its name. */
export const COLOURS: Readonly<Record<Layer, number>> = {
  CUT: 1,
  POCKET: 5,
  DRILL: 3,
  MARK: 6,
  NOTE: 7,
  SCALE: 8,
  LEGEND: 8,
};

/** A line type: its name in the file, what it shows, and its dashes (above 0) and gaps (below 0), mm. */
export interface LineType {
  readonly name: string;
  readonly shows: string;
  readonly dashes: readonly number[];
}

/** ISO 128-2: a hidden edge is a dashed narrow line, a centre line one of long dashes and dots. */
export const LINE_TYPES: Readonly<Record<Dashing, LineType>> = {
  far: { name: 'FAR_SIDE', shows: 'on the far side __ __ __ __', dashes: [3, -1.5] },
  centre: { name: 'CENTRE_LINE', shows: 'centre line ____ . ____ . ____', dashes: [8, -1.5, 0.5, -1.5] },
};

import type { Layer } from '../../drawing/index.js';

/** The unit of a template's file. */
export interface DxfScale {
  /** File units to the millimetre. */
  readonly perMm: number;
  /** `$INSUNITS`: 4 mm, 1 inch (DXF Reference, HEADER variables). */
  readonly insunits: 4 | 1;
  /** `$MEASUREMENT`: 1 metric, 0 English. */
  readonly measurement: 1 | 0;
}

/** Colour of each layer by its index; what a layer is for is told by its name. */
export const COLOURS: Readonly<Record<Layer, number>> = {
  CUT: 1,
  POCKET: 5,
  DRILL: 3,
  MARK: 6,
  NOTE: 7,
  SCALE: 8,
};

import type { Vec2 } from '../../frame/index.js';
import type { Box } from '../sheet/index.js';

/** The side of a view a row of dimensions stands on. */
export type Side = 'above' | 'below' | 'left' | 'right';

/** A row's own coordinates: `along` it in sheet mm, `out` from the view's border. */
export interface RowPlace {
  readonly side: Side;
  readonly at: (along: number, out: number) => Vec2;
  /** A sheet point's distance from the view's border, positive outside. */
  readonly outOf: (p: Vec2) => number;
  readonly alongOf: (p: Vec2) => number;
}

/** Places a row beside a view's box. */
export function rowBeside(box: Box, side: Side): RowPlace {
  const level = side === 'above' || side === 'below';
  const border = { above: box.maxY, below: box.minY, left: box.minX, right: box.maxX }[side];
  const sign = side === 'above' || side === 'right' ? 1 : -1;
  return {
    side,
    at: (along, out) => (level ? [along, border + sign * out] : [border + sign * out, along]),
    outOf: ([x, y]) => sign * ((level ? y : x) - border),
    alongOf: ([x, y]) => (level ? x : y),
  };
}

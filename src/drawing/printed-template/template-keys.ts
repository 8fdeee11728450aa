import type { Vec2 } from '../../frame/index.js';
import { type DrawingUnits, sizeRows } from '../sheet/index.js';

/** A dimension drawn along a whole side of a template, so that it runs over the joins of its sheets. */
export interface KeyDimension {
  readonly axis: 'x' | 'y';
  readonly from: Vec2;
  readonly to: Vec2;
  /** mm, not rounded. */
  readonly value: number;
  readonly what: string;
}

/** A key dimension's figure, both ways where the drawing has both. */
export const keyFigure = ({ value }: KeyDimension, units: DrawingUnits): string =>
  sizeRows(value, units).join(' ');

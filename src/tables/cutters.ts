import table from '../../shared/cutters.json' with { type: 'json' };
import type { ThreadSystem } from './fastener.js';
import { inMm } from './in-mm.js';

/** A straight cutter of a usual size. */
export interface Cutter {
  /** `10 mm`, `3/8 in` */
  readonly name: string;
  readonly system: ThreadSystem;
  /** mm */
  readonly diameter: number;
}

/** Usual straight cutters, metric and then inch sizes, thinnest first in each. */
export const cutters = (): readonly Cutter[] =>
  table.map(({ name, system, diameter, unit }) => ({
    name,
    system: system === 'inch' ? 'inch' : 'metric',
    diameter: inMm(diameter, unit),
  }));

/** Diameters of the usual straight cutters of one system, mm, thinnest first. */
export const cutterDiameters = (system: ThreadSystem = 'metric'): readonly number[] =>
  cutters()
    .filter((cutter) => cutter.system === system)
    .map(({ diameter }) => diameter);

/**
 * Diameter of the cutter nearest to what is wished, mm; of two equally near the one named first.
 *
 * @param from diameters to choose from, at least one; the usual metric ones when left out
 * @example nearestCutter(28 / 3) // 10
 */
export const nearestCutter = (wished: number, from: readonly number[] = cutterDiameters()): number =>
  from.reduce((best, size) => (Math.abs(size - wished) < Math.abs(best - wished) ? size : best));

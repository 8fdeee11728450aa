import type { Units } from '../../length/index.js';
import { printSteps } from './running-steps.js';

/** One system, or mm with inches in brackets. */
export type DrawingUnits = Units | 'dual';

/** A length in steps of each system. */
export interface Steps {
  readonly mm: number;
  readonly in: number;
}

/** As rows of text, mm first: `['57.5']`, `['57.5', '[2-17/64"]']`. */
export function dimensionRows(steps: Steps, units: DrawingUnits): readonly string[] {
  if (units !== 'dual') return [printSteps(steps[units], units)];
  return [printSteps(steps.mm, 'mm'), `[${printSteps(steps.in, 'in')}]`];
}

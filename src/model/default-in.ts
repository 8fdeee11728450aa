import { toMm, type Units } from '../length/index.js';
import type { ParameterMeta } from './parameter.js';

/**
 * The value a parameter starts from for who works in these units; undefined for a derived one. A length that is round in mm is
 * seldom round in inches, so a parameter states both.
 *
 * @returns mm for a length
 */
export function defaultIn(
  { kind, default: metric, inches }: ParameterMeta,
  units: Units,
): string | number | boolean | undefined {
  if (units === 'mm' || inches === undefined) return metric;
  return kind === 'length' ? toMm(Number(inches), 'in') : inches;
}

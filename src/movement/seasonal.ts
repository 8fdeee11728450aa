import { sheetNames, species, speciesNames } from '../tables/index.js';
import { change, coefficient } from './movement.js';

/** How much the moisture of wood in a heated house changes over a year, percentage points. Common practice, no source. */
const MOISTURE_SWING = 6;

/** Movement of a wood whose figures are not known, as a share of the width. Common practice, no source. */
const UNKNOWN_WOOD = 0.015;

/**
 * How much a width of wood moves over a year, mm, for flat-sawn stock, which moves most; 0 for sheet goods.
 *
 * The change per point of moisture is that of the species table; how much the moisture changes is common practice.
 *
 * @example seasonalMovement('white ash', 400) // 400 · 0.00274 · 6 = 6.6
 */
export function seasonalMovement(material: string, width: number): number {
  if (sheetNames.includes(material)) return 0;
  const perPoint = speciesNames.includes(material) ? coefficient(species(material), 'flat') : undefined;
  return perPoint === undefined ? width * UNKNOWN_WOOD : change(width, perPoint, MOISTURE_SWING);
}

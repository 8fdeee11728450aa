import { change } from './movement.js';
import { type Season, swing, USUAL_SEASON } from './season.js';
import { strainOf } from './strain.js';

/**
 * How much a width of wood moves over a year, mm; 0 for sheet goods. In a heated room and flat-sawn when nothing else is told.
 *
 * @example seasonalMovement('white ash', 400) // 400 · 0.00274 · 6 = 6.6
 */
export const seasonalMovement = (material: string, width: number, season: Season = USUAL_SEASON): number =>
  change(width, strainOf(material, season.cut).width, swing(season));

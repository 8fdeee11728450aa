import { rowNamed } from './row-named.js';
import { sheet, sheetNames } from './sheet.js';
import { species, speciesNames } from './species.js';

/** Every wood and sheet a board may be made of. */
export const materialNames: readonly [string, ...string[]] = [...speciesNames, ...sheetNames];

/**
 * Density of a board's material, kg/m³: solid wood at 12 % moisture content, sheet goods at the middle of their range.
 *
 * @throws InputError for a name in neither table, with the nearest one
 */
export function density(material: string): number {
  const rows = [...speciesNames.map(species), ...sheetNames.map(sheet)];
  return rowNamed<'name', { name: string; density: number }>(rows, 'name', material, 'material').density;
}

import { once } from '../once.js';
import { rowNamed } from './row-named.js';
import { sheet, sheetNames } from './sheet.js';
import { species, speciesNames } from './species.js';

/** Every wood and sheet a board may be made of. */
export const materialNames: readonly [string, ...string[]] = [...speciesNames, ...sheetNames];

const rows = once(() => [...speciesNames.map(species), ...sheetNames.map(sheet)]);

/**
 * Density of a board's material, kg/m³: solid wood at 12 % moisture content, sheet goods at the middle of their range.
 *
 * @throws InputError for a name in neither table, with the nearest one
 */
export const density = (material: string): number =>
  rowNamed<'name', { name: string; density: number }>(rows(), 'name', material, 'material').density;

/** Mass of so many mm³ of a material, kg. @throws InputError as {@link density} does */
export const massOf = (volumeMm3: number, material: string): number => volumeMm3 * 1e-9 * density(material);

import table from '../../shared/sheet-goods.json' with { type: 'json' };
import { rowNamed } from './row-named.js';

/** Sheet goods as they are bought. */
export interface Sheet {
  readonly name: string;
  /** Middle of the published range, kg/m³. */
  readonly density: number;
  readonly densityRange: readonly [least: number, most: number];
  /** mm */
  readonly usualThicknesses: readonly number[];
}

/** Names of the sheet goods in the table. */
export const sheetNames = table.map((row) => row.name) as [string, ...string[]];

/**
 * Sheet goods by name.
 *
 * @throws InputError for a name that is not in the table, with the nearest one
 * @example sheet('birch plywood').density // 670
 */
export function sheet(name: string): Sheet {
  const { densityLeast, densityMost, usualThicknesses } = rowNamed(table, 'name', name, 'sheet goods');
  return {
    name,
    density: (densityLeast + densityMost) / 2,
    densityRange: [densityLeast, densityMost],
    usualThicknesses,
  };
}

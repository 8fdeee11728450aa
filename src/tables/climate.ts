import table from '../../shared/climates.json' with { type: 'json' };
import { rowNamed } from './row-named.js';

/** Between which moistures wood goes in a year where a piece stands, %. */
export interface Climate {
  readonly name: string;
  readonly help: string;
  readonly dryPercent: number;
  readonly dampPercent: number;
  readonly source: string;
}

/** Names of the climates in the table; the first is the usual one. */
export const climateNames = table.map((row) => row.name) as [string, ...string[]];

/**
 * A climate by name.
 *
 * @throws InputError for a name that is not in the table, with the nearest one
 * @example climate('heated-room').dampPercent // 10
 */
export const climate = (name: string): Climate => rowNamed(table, 'name', name, 'climate');

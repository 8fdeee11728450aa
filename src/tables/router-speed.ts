import table from '../../shared/router-speeds.json' with { type: 'json' };
import { InputError } from '../errors.js';
import { inMm } from './in-mm.js';

/**
 * The highest speed trade tables allow for a cutter; the mark on the cutter rules where it says less.
 *
 * @param diameter cutting diameter, mm
 * @returns revolutions per minute
 * @throws InputError for a size that is not positive, or larger than any in the table
 * @example routerSpeedLimit(12.7) // 24000
 */
export function routerSpeedLimit(diameter: number): number {
  const largest = Math.max(...table.map((row) => inMm(row.upToDiameter, row.unit)));
  const row = table.find((each) => diameter > 0 && diameter <= inMm(each.upToDiameter, each.unit));
  if (row !== undefined) return row.rpm;
  throw new InputError(
    'cutter-not-in-speed-table',
    (say) =>
      `a ${say.fine(diameter)} cutter has no speed in the table; it must be more than 0 and at most ${say.fine(largest)}: use a smaller cutter`,
  );
}

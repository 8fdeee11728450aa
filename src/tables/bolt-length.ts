import table from '../../shared/bolt-lengths.json' with { type: 'json' };
import type { ThreadSystem } from './fastener.js';
import { inMm } from './in-mm.js';

/** Standard nominal lengths of screws and bolts, mm, shortest first. */
export const boltLengths = (system: ThreadSystem): readonly number[] =>
  table.filter((row) => row.system === system).map((row) => inMm(row.length, row.unit));

/** The shortest standard length that is at least `least`, mm; undefined beyond the longest. */
export const boltLengthFrom = (system: ThreadSystem, least: number): number | undefined =>
  boltLengths(system).find((length) => length >= least);

/** The longest standard length that is at most `most`, mm; undefined below the shortest. */
export const boltLengthUpTo = (system: ThreadSystem, most: number): number | undefined =>
  boltLengths(system).findLast((length) => length <= most);

import table from '../../shared/fasteners.json' with { type: 'json' };
import { inMm } from './in-mm.js';
import { rowNamed } from './row-named.js';

export type ThreadSystem = 'metric' | 'inch';

/** Round pieces and holes that belong to one thread size. All lengths mm. */
export interface Fastener {
  /** `M8`, `5/16` */
  readonly size: string;
  readonly system: ThreadSystem;
  readonly diameter: number;
  readonly pitch: number;
  /** ISO 273 medium, or ASME B18.2.8 normal. */
  readonly clearanceHole: number;
  readonly hexHead: HexHead;
  readonly nut: { readonly acrossFlats: number; readonly thickness: number };
  readonly washer: Washer;
  /** For slots and soft faces. */
  readonly largeWasher: Washer;
  readonly capHead: { readonly diameter: number; readonly height: number; readonly key: number };
  /** `diameter` is the theoretical sharp one. */
  readonly countersunkHead: { readonly diameter: number; readonly height: number; readonly angleDeg: number };
}

export interface HexHead {
  readonly acrossFlats: number;
  /** The standard's least; a sharp hexagon measures flats × 2/√3. */
  readonly acrossCornersLeast: number;
  readonly height: number;
}

export interface Washer {
  readonly bore: number;
  readonly diameter: number;
  readonly thickness: number;
}

/** Thread sizes in the table, as they are asked for. */
export const fastenerSizes = table.sizes.map((row) => row.size) as [string, ...string[]];

/**
 * The pieces and holes of one thread size.
 *
 * @param size `M5` … `M10`, `1/4` … `3/8`
 * @throws InputError for a size that is not in the table, with the nearest one
 * @example fastener('M8').clearanceHole // 9
 */
export function fastener(size: string): Fastener {
  const { system, diameter, pitch, unit } = rowNamed(table.sizes, 'size', size, 'fastener size');
  return {
    size,
    system: system === 'inch' ? 'inch' : 'metric',
    diameter: inMm(diameter, unit),
    pitch: inMm(pitch, unit),
    clearanceHole: part(table.clearanceHoles, size).diameter,
    hexHead: part(table.hexHeads, size),
    nut: part(table.nuts, size),
    washer: part(table.washers, size),
    largeWasher: part(table.largeWashers, size),
    capHead: part(table.capHeads, size),
    countersunkHead: part(table.countersunkHeads, size),
  };
}

/** A row's lengths in mm; its angle stays as it is. */
function part<Row extends { readonly size: string; readonly unit: string; readonly source: string }>(
  rows: readonly Row[],
  size: string,
): Omit<Row, 'size' | 'unit' | 'source'> {
  const { size: _size, unit, source: _source, ...values } = rowNamed(rows, 'size', size, 'fastener size');
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => [
      name,
      name === 'angleDeg' ? value : inMm(Number(value), unit),
    ]),
  ) as Omit<Row, 'size' | 'unit' | 'source'>;
}

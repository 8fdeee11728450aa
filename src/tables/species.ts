import table from '../../shared/species.json' with { type: 'json' };
import { once } from '../once.js';
import { rowNamed } from './row-named.js';

/** A wood as the published tables describe it: averages of small clear specimens. */
export interface Species {
  readonly name: string;
  /** At 12 % moisture content, kg/m³: 1000 · G · 1.12 (Wood Handbook, FPL-GTR-190 (2010), chapter 4). */
  readonly density: number;
  /** Ovendry mass over volume at 12 % moisture content, relative to water. */
  readonly specificGravity: number;
  /** Green to ovendry, % of the green size; absent where the table has no row. */
  readonly shrinkage?: {
    readonly radialPercent: number;
    readonly tangentialPercent: number;
    readonly volumetricPercent: number;
    /** Moisture content at which shrinking starts, %. */
    readonly startPercent: number;
  };
  /** Change of size per 1 % of moisture content, as a share of the size; from 6 to 14 %. */
  readonly movement?: {
    readonly radial: number;
    readonly tangential: number;
    /** The table gives this figure for a commercial group of species. */
    readonly byGroup: boolean;
  };
  /** Modulus of rupture, MPa. */
  readonly rupture: number;
  /** Modulus of elasticity, MPa. */
  readonly elasticity: number;
  /** Shear parallel to the grain, MPa. */
  readonly shear: number;
  /** Compression across the grain, at the proportional limit, MPa. */
  readonly compressionAcross: number;
  /** Tension across the grain, MPa; absent where it is not published. */
  readonly tensionAcross?: number;
  /** Elasticity across the grain as a share of that along it; absent where it is not published. */
  readonly elasticRatios?: { readonly tangential: number; readonly radial: number };
}

/** One pound-force per square inch, MPa (NIST SP 811). */
const PSI = 0.006894757;

/** Names of the woods in the table. */
export const speciesNames = table.map((row) => row.name) as [string, ...string[]];

/**
 * A wood by name.
 *
 * @throws InputError for a name that is not in the table, with the nearest one
 * @example species('white ash').density // 672
 */
export const species = (name: string): Species => rowNamed(woods(), 'name', name, 'species');

const woods = once(() => table.map(woodOf));

function woodOf(row: (typeof table)[number]): Species {
  const gravity = row.specificGravity.at12Percent;
  return {
    name: row.name,
    density: gravity * 1000 * 1.12,
    specificGravity: gravity,
    ...(row.shrinkage && { shrinkage: row.shrinkage }),
    ...(row.movement && { movement: row.movement }),
    rupture: row.bending.rupturePsi * PSI,
    elasticity: row.bending.elasticityMpsi * 1e6 * PSI,
    shear: row.strength.shearMPa,
    compressionAcross: row.strength.compressionAcrossMPa,
    ...(row.strength.tensionAcrossMPa !== undefined && { tensionAcross: row.strength.tensionAcrossMPa }),
    ...(row.elasticRatios && { elasticRatios: row.elasticRatios }),
  };
}

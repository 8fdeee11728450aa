import type { Species } from '../tables/index.js';

/**
 * Coefficients of variation of clear wood: Wood Handbook, FPL-GTR-282 (2021), Table 5–6.
 */
export const VARIATION = {
  rupture: 0.16,
  elasticity: 0.22,
  shear: 0.14,
  compressionAcross: 0.28,
  tensionAcross: 0.25,
} as const;

/** One-sided 5 % point of the normal distribution. */
const FIVE_PERCENT = 1.645;

/**
 * What 95 of 100 clear pieces reach: the mean less 1.645 coefficients of variation.
 *
 * @param mean MPa
 * @example fivePercent(98.6, 0.16) // 72.6…
 */
export const fivePercent = (mean: number, variation: number): number => mean * (1 - FIVE_PERCENT * variation);

/** From a 5 % value of a short test to ten years of load, safety included; ASTM D245, Table 8, from memory. */
const CLEAR_TO_ALLOWED = { softwood: 2.1, hardwood: 2.3 } as const;

/** Against ten years: a load of ten minutes; NDS, Table 2.3.2, from memory. */
const TEN_MINUTES = 1.6;

/** Share of a short test that is borne for ten years: Wood Handbook, FPL-GTR-282 (2021), p. 5–38. */
export const TEN_YEARS_SHARE = 0.6;

/** Share of the static load a chair joint bears in cycles, the least of three kinds of tenon. A test series of chairs. */
export const CYCLIC_SHARE = 0.565;

/**
 * What a person's weight for some minutes may use: 5 % value / 2.3 (2.1 in softwood) × 1.6.
 *
 * @param five 5 % value, MPa
 * @example designValue(72.6, 'hardwood') // 50.5
 */
export const designValue = (five: number, wood: keyof typeof CLEAR_TO_ALLOWED): number =>
  (five / CLEAR_TO_ALLOWED[wood]) * TEN_MINUTES;

const SOFTWOODS: ReadonlySet<string> = new Set([
  'coast Douglas-fir',
  'eastern white pine',
  'loblolly pine',
  'longleaf pine',
  'shortleaf pine',
  'ponderosa pine',
  'western red cedar',
]);

export const kindOf = ({ name }: Pick<Species, 'name'>): keyof typeof CLEAR_TO_ALLOWED =>
  SOFTWOODS.has(name) ? 'softwood' : 'hardwood';

import { trimmed } from '../length/index.js';
import { onceForEach } from '../once.js';
import { atMoisture, designValue, fivePercent, kindOf, slopeShare, VARIATION } from '../statics/index.js';
import { type Species, sheetNames, species } from '../tables/index.js';
import type { StockState } from './stock-state.js';

/** What the wood of one board is taken to bear; MPa. */
export interface WoodStrength {
  readonly species: Species;
  readonly bending: Borne;
  readonly shear: Borne;
  /** Across the grain, at the proportional limit. */
  readonly bearing: Borne;
  /** Mean, as published: it holds the shear of a slender test piece. */
  readonly elasticity: number;
}

/** Two values of one strength: what 95 of 100 clear pieces reach, and what a person's weight may use for some minutes. */
export interface Borne {
  readonly five: number;
  readonly design: number;
}

/**
 * Strength and stiffness fall as wood takes up water: dry over green, the greatest ratios of the woods in the table, and where
 * both meet. From memory, on the safe side; Wood Handbook, FPL-GTR-282 (2021), eq. 5–3.
 */
const DRY_TO_GREEN = { strength: 2.1, elasticity: 1.4 } as const;
const MEETING = 25;

/** Why no strength is told of a material. */
export const whyNoStrength = (material: string, { moisture }: StockState): string =>
  sheetNames.includes(material)
    ? `no published strength of ${material} is in the tables`
    : `its wood is taken to come to ${trimmed(moisture, 1)} % of water; above ${MEETING} % nothing is told`;

/** The wood of a board or a tenon; undefined for sheet goods and for stock too wet to say anything of. */
export function woodStrength(material: string, stock: StockState): WoodStrength | undefined {
  const of = known(stock);
  if (!of.has(material)) of.set(material, workedOut(material, stock));
  return of.get(material);
}

/** A stock never changes; as many as the tables have woods. */
const known = onceForEach((_: StockState) => new Map<string, WoodStrength | undefined>());

function workedOut(material: string, { grainOneIn, moisture }: StockState): WoodStrength | undefined {
  if (sheetNames.includes(material) || moisture > MEETING) return undefined;
  const wood = species(material);
  // no wood is taken to be better than the tables
  const damp = (ratio: number) => atMoisture(1, 1 / ratio, Math.max(12, moisture), MEETING);
  const wet = damp(DRY_TO_GREEN.strength);
  const borne = (mean: number, variation: number, share = 1): Borne => {
    const five = fivePercent(mean, variation) * wet * share;
    return { five, design: designValue(five, kindOf(wood)) };
  };
  return {
    species: wood,
    bending: borne(wood.rupture, VARIATION.rupture, slopeShare(1 / grainOneIn)),
    shear: borne(wood.shear, VARIATION.shear),
    bearing: borne(wood.compressionAcross, VARIATION.compressionAcross),
    elasticity: wood.elasticity * damp(DRY_TO_GREEN.elasticity),
  };
}

import type { Design, PlacedBoard } from '../assembly/index.js';
import { USUAL_STOCK } from '../assembly/index.js';
import { designValue, fivePercent, kindOf, slopeShare, VARIATION } from '../statics/index.js';
import { type Species, sheetNames, species } from '../tables/index.js';

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
 * Strength falls as wood takes up water: dry over green, the greatest ratio of the woods in the table, and where both meet.
 * From memory, on the safe side; Wood Handbook eq. 5–3.
 */
const DRY_TO_GREEN = 2;
const MEETING = 25;

/** Above this no strength is told: what most indoor glues are sound to. Wood Handbook, FPL-GTR-282 (2021), p. 10–20. */
export const MOST_MOISTURE = 15;

export const whyNoStrength = (design: Design, { board }: PlacedBoard): string =>
  sheetNames.includes(board.material)
    ? `no published strength of ${board.material} is in the tables`
    : `its wood is taken to hold ${(design.stock ?? USUAL_STOCK).moisture} % of water; above ${MOST_MOISTURE} % nothing is told, nor of indoor glues`;

/** The wood of a board of a design; undefined for sheet goods and for stock too wet to say anything of. */
export function woodStrength(design: Design, { board }: PlacedBoard): WoodStrength | undefined {
  const { grainOneIn, moisture } = design.stock ?? USUAL_STOCK;
  if (sheetNames.includes(board.material) || moisture > MOST_MOISTURE) return undefined;
  const wood = species(board.material);
  const wet = DRY_TO_GREEN ** (Math.min(0, 12 - moisture) / (MEETING - 12));
  const borne = (mean: number, variation: number, share = 1): Borne => {
    const five = fivePercent(mean, variation) * wet * share;
    return { five, design: designValue(five, kindOf(wood)) };
  };
  return {
    species: wood,
    bending: borne(wood.rupture, VARIATION.rupture, slopeShare(1 / grainOneIn)),
    shear: borne(wood.shear, VARIATION.shear),
    bearing: borne(wood.compressionAcross, VARIATION.compressionAcross),
    elasticity: wood.elasticity,
  };
}

import type { Species } from '../tables/index.js';

/** How the board was sawn: its width runs along the growth rings, or across them. */
export type Cut = 'flat' | 'quarter';

/** Change of size per 1 % of moisture content across a board of this cut; undefined where it is not published. */
export const coefficient = ({ movement }: Pick<Species, 'movement'>, cut: Cut): number | undefined =>
  movement && (cut === 'flat' ? movement.tangential : movement.radial);

/** Change of a size across the grain, mm: `D · C · ΔM`. Wood Handbook, FPL-GTR-190 (2010), eq. 13–2, from 6 to 14 %. */
export const change = (size: number, perPercent: number, moisture: number): number =>
  size * perPercent * moisture;

/** Published elasticity holds shear of the test piece: along the grain it is 1.1 times that. Wood Handbook (2021), Table 5–1. */
const TRUE_ELASTICITY = 1.1;

/** A board that is held so that it cannot move across its grain. MPa, % */
export interface Held {
  /** Elasticity across the grain. */
  readonly elasticity: number;
  readonly stressPerPercent: number;
  /** Loss of moisture at which it cracks at the mean strength. */
  readonly cracksAt: number;
}

/** Stress of a board held across the grain for each 1 % it dries, and where it cracks; undefined where no row is published. */
export function held(wood: Species, cut: Cut): Held | undefined {
  const perPercent = coefficient(wood, cut);
  const { elasticRatios, tensionAcross } = wood;
  if (perPercent === undefined || !elasticRatios || tensionAcross === undefined) return undefined;
  const ratio = cut === 'flat' ? elasticRatios.tangential : elasticRatios.radial;
  const elasticity = ratio * TRUE_ELASTICITY * wood.elasticity;
  const stressPerPercent = elasticity * perPercent;
  return { elasticity, stressPerPercent, cracksAt: tensionAcross / stressPerPercent };
}

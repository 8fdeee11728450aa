import { GLUE_SHEAR } from '../statics/index.js';

/** White or yellow wood glue of a class D1 to D4 on its label, or any other. */
export const GLUES = ['wood-glue', 'other'] as const;

export interface GlueTold {
  /** Wood glue when left out. */
  readonly kind?: (typeof GLUES)[number];
  /** Least shear in test pieces of one's own, MPa. */
  readonly shear?: number;
}

/** Above this no strength of a joint is told, %: what most indoor glues are sound to. Wood Handbook, FPL-GTR-282 (2021), p. 10–20. */
export const MOST_GLUED_MOISTURE = 15;

/** What a glue bears in shear, MPa; undefined where nobody measured it. */
export const glueShear = ({ kind, shear }: GlueTold = {}): number | undefined =>
  shear ?? (kind === 'other' ? undefined : GLUE_SHEAR);

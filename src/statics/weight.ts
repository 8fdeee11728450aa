/** Parameters of a distribution skewed to one side, as growth charts print them. */
export interface Lms {
  readonly l: number;
  readonly m: number;
  readonly s: number;
}

/** Value at a standard score: `M (1 + L·S·z)^(1/L)`. CDC growth charts (2000). */
export const lmsValue = ({ l, m, s }: Lms, z: number): number => m * (1 + l * s * z) ** (1 / l);

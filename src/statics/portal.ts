/** Two columns on pinned feet and a rail between them, a force sideways at the top. N, mm, MPa. */
export interface Portal {
  readonly force: number;
  readonly height: number;
  readonly span: number;
  readonly elasticity: number;
  /** mm⁴ */
  readonly column: number;
  readonly rail: number;
}

/** Moment in each of the two joints, N·mm: half the force times the height, whatever the joints' stiffness. */
export const portalMoment = ({ force, height }: Pick<Portal, 'force' | 'height'>): number =>
  (force * height) / 2;

/**
 * Sway of the top, mm: `Hh³/(6EIc) + Hh²L/(12EIb) + Hh²/(2k)`.
 *
 * @param stiffness of a joint, N·mm/rad; rigid when left out
 */
export const portalSway = (p: Portal, stiffness = Number.POSITIVE_INFINITY): number =>
  (p.force * p.height ** 3) / (6 * p.elasticity * p.column) +
  (p.force * p.height ** 2 * p.span) / (12 * p.elasticity * p.rail) +
  (p.force * p.height ** 2) / (2 * stiffness);

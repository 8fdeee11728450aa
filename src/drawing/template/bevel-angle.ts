import type { Bevel } from '../../board/index.js';

/** A bevel's angle as a saw or a bevel gauge is set to it. */
export interface BevelAngle {
  readonly deg: number;
  readonly from: 'off square' | 'to the faces';
}

/**
 * The angle of a bevel: off square for an end or edge, to the wide faces where it lies nearer to those, as on a wedge. Never more
 * than 45°.
 */
export function bevelAngle({ normal }: Bevel): BevelAngle {
  const offSquare = (Math.asin(Math.min(1, Math.abs(normal[2]))) * 180) / Math.PI;
  return offSquare > 45 + 1e-9
    ? { deg: 90 - offSquare, from: 'to the faces' }
    : { deg: offSquare, from: 'off square' };
}

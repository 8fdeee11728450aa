import type { Vec3 } from '../frame/index.js';

/** How a saw is set for an end cut, the reference face on its table; degrees out of square. */
export interface SawAngles {
  /** Across the board: from square to the edge, on the reference face. */
  readonly mitreDeg: number;
  /** Through the thickness: how far the blade tilts. */
  readonly bevelDeg: number;
}

/**
 * The mitre and the bevel of a cut across the grain.
 *
 * @param normal of the cut, unit, board frame
 * @example sawAngles([Math.cos(Math.PI / 6), 0, 0.5]) // mitreDeg 0, bevelDeg 30
 */
export const sawAngles = ([x, y, z]: Vec3): SawAngles => ({
  mitreDeg: Math.atan2(Math.abs(y), Math.abs(x)) * DEG,
  bevelDeg: Math.asin(Math.min(1, Math.abs(z))) * DEG,
});

const DEG = 180 / Math.PI;

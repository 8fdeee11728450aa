import { angleDeg, directionIn, dot, type Vec3 } from '../frame/index.js';
import type { Mortise } from './board.js';

/** Where a mortise opens on its face; mm, degrees. */
export interface Mouth {
  /** Normal of the face, out of the wood, board frame. */
  readonly normal: Vec3;
  /** Between the mortise's axis and that normal; 0 for a mortise square to its face. */
  readonly leanDeg: number;
  /** How far the mouth's short point lies below its middle along the axis, and its long point above. */
  readonly drop: number;
  /** Depth along the axis at the shallowest point of the mouth: where a depth stop is set to zero. */
  readonly shortDepth: number;
  /** Depth along the axis at the deepest point of the mouth. */
  readonly longDepth: number;
  /** How far the bottom has moved sideways over the face, against the middle of the mouth: depth · tan lean, seen along the face. */
  readonly sideways: number;
}

/**
 * The mouth of a mortise: a flat face cuts the cutter's obround path at the lean of its axis.
 *
 * Over the obround the face rises by `n·p / n_z` in the mortise's frame, so the drop is the obround's half extent along the
 * slope, `(L − w)/2·|n_x| + w/2·√(n_x² + n_y²)`, over `n_z`.
 *
 * @example mouthOf(mortise).shortDepth // the depth itself when the axis is square to the face
 */
export function mouthOf(mortise: Mortise): Mouth {
  const normal = mortise.faceNormal ?? mortise.at.z;
  const { depth, length, width } = mortise;
  if (!mortise.faceNormal)
    return { normal, leanDeg: 0, drop: 0, shortDepth: depth, longDepth: depth, sideways: 0 };
  const [nx, ny, nz] = directionIn(mortise.at, normal);
  const drop = (((length - width) / 2) * Math.abs(nx) + (width / 2) * Math.hypot(nx, ny)) / nz;
  return {
    normal,
    leanDeg: angleDeg(mortise.at.z, normal),
    drop,
    shortDepth: depth - drop,
    longDepth: depth + drop,
    sideways: depth * Math.sqrt(Math.max(1 - dot(mortise.at.z, normal) ** 2, 0)),
  };
}

import { scale, type Vec3 } from './vec.js';

/** How a straight part leans, as two elevations show it; degrees from plumb. */
export interface LeanAngles {
  /** Seen from the side: the foot stands out along y. */
  readonly rakeDeg?: number;
  /** Seen from the front: the foot stands out along x. */
  readonly splayDeg?: number;
}

/** What a rake and a splay come to together. */
export interface Lean {
  /** Unit vector up the part. */
  readonly up: Vec3;
  /** How far the foot stands out along x, and along y, for each mm of height. */
  readonly outPerRise: readonly [x: number, y: number];
  /** Length along the part for each mm of height. */
  readonly lengthPerRise: number;
  /** The one true angle from plumb, degrees. */
  readonly resultantDeg: number;
  /** The direction it leans in, seen from above: from x towards y, degrees. */
  readonly sightlineDeg: number;
}

/**
 * The true lean of a part from its rake and splay: tan²R = tan²a + tan²b, and tan φ = tan a / tan b.
 *
 * @example leaning({ rakeDeg: 10, splayDeg: 10 }).resultantDeg // 14.0019…
 */
export function leaning({ rakeDeg = 0, splayDeg = 0 }: LeanAngles): Lean {
  const out = [Math.tan(splayDeg / DEG), Math.tan(rakeDeg / DEG)] as const;
  const lengthPerRise = Math.hypot(out[0], out[1], 1);
  return {
    up: scale([-out[0], -out[1], 1], 1 / lengthPerRise),
    outPerRise: out,
    lengthPerRise,
    resultantDeg: Math.atan(Math.hypot(...out)) * DEG,
    sightlineDeg: Math.atan2(out[1], out[0]) * DEG,
  };
}

const DEG = 180 / Math.PI;

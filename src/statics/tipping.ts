/** Standard gravity, m/s². */
export const GRAVITY = 9.81;

/** Height of a standing person's centre of mass as a share of the stature, from memory. */
const CENTRE_SHARE = 0.56;

/** A person or a load standing at one place, about one edge of the foot polygon. N, mm. */
export interface Standing {
  /** Weight of the piece, N. */
  readonly own: number;
  /** Its centre of mass inside the edge, and above the floor. */
  readonly ownInside: number;
  readonly ownHeight: number;
  /** Load, N, and its place inside the edge; negative outside. */
  readonly load: number;
  readonly inside: number;
  /** Height of the surface it stands on. */
  readonly height: number;
}

/** Sideways force at the height of the surface that tips the piece over the edge, N; negative when it tips by itself. */
export const tippingForce = ({ own, ownInside, load, inside, height }: Standing): number =>
  (load * inside + own * ownInside) / height;

/** Smallest load outside the edge that tips the piece, N; undefined when the load stands inside. */
export const tippingLoad = ({ own, ownInside, inside }: Standing): number | undefined =>
  inside < 0 ? (own * ownInside) / -inside : undefined;

/**
 * Lean, in degrees, at which piece and person as one body tip over the edge. Information only: a person is no rigid body.
 *
 * @param stature mm
 */
export function leanAngle(
  s: Standing,
  stature: number,
): {
  readonly inside: number;
  readonly height: number;
  readonly deg: number;
} {
  const all = s.load + s.own;
  const inside = (s.load * s.inside + s.own * s.ownInside) / all;
  const height = (s.load * (s.height + CENTRE_SHARE * stature) + s.own * s.ownHeight) / all;
  return { inside, height, deg: (Math.atan(inside / height) * 180) / Math.PI };
}

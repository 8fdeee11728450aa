import { JoinError } from '../errors.js';
import { angleDeg, directionIn, dot, type Frame, scale, unit, type Vec3 } from '../frame/index.js';
import { PARALLEL_DEG } from '../tolerances.js';

/**
 * The way a joint's mortises run: square to the seat, along the grain of one of the boards, or a direction of the assembly
 * frame (any length, either sense).
 */
export type AxisOption = 'face' | 'along a' | 'along b' | Vec3;

/** Beyond this lean a mortise is more along the board than into it. Common practice, no source. */
const MOST_LEAN_DEG = 45;

/** A joint's axis against its seat: what an oblique mouth needs on the seat, beside a square one. */
export interface Lean {
  /** Unit, in the seat's frame, z from a into b; [0, 0, 1] when square to the seat. */
  readonly axis: Vec3;
  /** A length along the mortise takes this much more of the seat along its x. */
  readonly along: number;
  /** The cutter takes this much more of the seat across. */
  readonly across: number;
  /** Each round end takes this share of the cutter's diameter more along x, for a mouth that is skewed both ways. */
  readonly skew: number;
}

const SQUARE: Lean = { axis: [0, 0, 1], along: 1, across: 1, skew: 0 };

/** @throws JoinError `join-option` for a word that is no axis, or a direction without a length */
export function checkedAxis(joint: string, axis: AxisOption | undefined): void {
  if (axis === undefined || axis === 'face' || axis === 'along a' || axis === 'along b') return;
  const given = axis as unknown;
  if (Array.isArray(given) && given.length === 3 && given.every(Number.isFinite) && Math.hypot(...axis) > 0)
    return;
  throw new JoinError(
    'join-option',
    `joint ${joint}: axis is ${JSON.stringify(given)}; it must be 'face', 'along a', 'along b' or a direction [x, y, z] that is not zero: give one of these`,
  );
}

/**
 * The lean of a joint's axis from the normal of its seat.
 *
 * In the seat's frame, with the axis d, the mortise's length direction is x freed of d. Seen along d on the seat it is
 * stretched by 1/√(1 − d_x²), and its width by √(1 − d_x²)/d_z.
 *
 * @param seat assembly frame, z from a into b
 * @param grains x of both boards, assembly frame
 * @throws JoinError `axis-lean` when the axis leans more than 45° from the seat's normal
 */
export function leanOf(
  joint: string,
  axis: AxisOption | undefined,
  seat: Frame,
  grains: readonly [a: Vec3, b: Vec3],
): Lean {
  if (axis === undefined || axis === 'face') return SQUARE;
  const given = axis === 'along a' ? grains[0] : axis === 'along b' ? grains[1] : axis;
  const towards = unit(given);
  const d = dot(towards, seat.z) < 0 ? scale(towards, -1) : towards;
  const lean = angleDeg(d, seat.z);
  if (lean < PARALLEL_DEG) return SQUARE;
  if (lean > MOST_LEAN_DEG) {
    throw new JoinError(
      'axis-lean',
      (say) =>
        `joint ${joint}: its mortises lean ${say.angle(lean)} from square to its seat; they may lean ${say.angle(MOST_LEAN_DEG)} at most: let them run square to it, or nearer to square`,
    );
  }
  const [dx, dy, dz] = directionIn(seat, d);
  const flat = Math.sqrt(1 - dx * dx);
  return {
    axis: [dx, dy, dz],
    along: 1 / flat,
    across: flat / dz,
    skew: Math.hypot(1, (dx * dy) / dz) - 1,
  };
}

/**
 * How far the short point of an oblique mouth lies below its middle, along the axis, mm.
 *
 * @param length and width of the mortise, square to its axis
 */
export function dropOf({ axis: [dx, dy, dz] }: Lean, length: number, width: number): number {
  const flat = Math.sqrt(1 - dx * dx);
  const [nx, ny] = [(dx * dz) / flat, dy / flat];
  return (((length - width) / 2) * Math.abs(nx) + (width / 2) * Math.hypot(nx, ny)) / dz;
}

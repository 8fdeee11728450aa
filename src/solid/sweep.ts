import { add, length, scale, type Vec3 } from '../frame/index.js';
import { PATH_TOUCH } from '../tolerances.js';
import type { Body, Kernel } from './kernel.js';

/** Steps of one way; each takes all the gap there is, so a few dozen bring any two faces together. */
const MOST_STEPS = 400;

/**
 * Everything a convex body passes on a straight way: the hull of its start and its end, exact for a convex body.
 * The caller owns it.
 *
 * @param from and `to` shifts from where the body is, mm
 */
export function convexSweep(kernel: Kernel, body: Body, from: Vec3, to: Vec3): Body {
  const [start, end] = [body.translate([...from]), body.translate([...to])];
  const swept = kernel.wasm.Manifold.hull([start, end]);
  start.delete();
  end.delete();
  return swept;
}

/**
 * Moves a body towards where it is, from `from` away, and tells how much of the way is left when it first touches another.
 *
 * Bodies a gap g apart may move by less than g without touching, whatever their shapes: so the way is proved whole, not at
 * samples (conservative advancement).
 *
 * @param from where it starts, as a shift from where it is, mm
 * @param ending the way left that need not be proved, mm: the seat itself
 * @returns mm left at the first touch; 0 when it arrives
 */
export function wayLeftAtTouch(moving: Body, still: Body, from: Vec3, ending: number): number {
  const whole = length(from);
  let left = whole;
  for (let step = 0; step < MOST_STEPS && left > ending; step += 1) {
    const posed = moving.translate([...scale(from, left / whole)]);
    const gap = posed.minGap(still, left);
    posed.delete();
    if (gap >= left) return 0;
    if (gap < PATH_TOUCH) return left;
    left -= gap * (1 - 1e-9);
  }
  return left > ending ? left : 0;
}

/**
 * The most two bodies share at steps of a straight way, mm³, and where: for bodies that slide along each other, which the
 * proof by gaps cannot pass.
 *
 * @param from and `to` shifts from where the moving body is, mm
 */
export function mostShared(
  moving: Body,
  still: Body,
  from: Vec3,
  to: Vec3,
  step: number,
): { readonly shared: number; readonly at: Vec3 } {
  const way: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const count = Math.max(1, Math.ceil(length(way) / step));
  let most = { shared: 0, at: from };
  for (let i = 0; i <= count; i += 1) {
    const at = add(from, scale(way, i / count));
    const posed = moving.translate([...at]);
    const common = posed.intersect(still);
    const shared = common.volume();
    posed.delete();
    common.delete();
    if (shared > most.shared) most = { shared, at };
  }
  return most;
}

import type { Vec3 } from '../../frame/index.js';

/**
 * Unit normal of a facet as it is written, by the right-hand rule; nothing in every direction for corners in one line, as the
 * format allows. On a sliver some thousandths of a millimetre wide rounding to single precision turns the normal by up to a
 * degree (measured: 0.7): one worked out before it would be found wrong by a reader.
 *
 * @param corners nine figures
 */
export function facetNormal(corners: ArrayLike<number>): Vec3 {
  const along = (corner: number, axis: number): number => corners[3 * corner + axis]! - corners[axis]!;
  const [ux, uy, uz] = [along(1, 0), along(1, 1), along(1, 2)];
  const [vx, vy, vz] = [along(2, 0), along(2, 1), along(2, 2)];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.hypot(x, y, z);
  // + 0 keeps -0 out of the text
  return size > 0 ? [x / size + 0, y / size + 0, z / size + 0] : [0, 0, 0];
}

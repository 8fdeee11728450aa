import { add, cross, dot, scale, subtract, type Vec3 } from './vec.js';

/** A plane in space: a point of it, mm, and its unit normal. */
export interface Plane {
  readonly point: Vec3;
  readonly normal: Vec3;
}

/**
 * The level plane at a height, mm, its normal up.
 *
 * @example levelAt(450).point // [0, 0, 450]
 */
export const levelAt = (height: number): Plane => ({ point: [0, 0, height], normal: [0, 0, 1] });

/**
 * How far a point lies out of a plane, mm; positive on the side the normal points to.
 *
 * @example heightOver(levelAt(10), [5, 5, 12]) // 2
 */
export const heightOver = (plane: Plane, p: Vec3): number => dot(plane.normal, subtract(p, plane.point));

/**
 * The mirror image of a point in a plane.
 *
 * @example mirroredPoint(levelAt(10), [5, 5, 12]) // [5, 5, 8]
 */
export const mirroredPoint = (plane: Plane, p: Vec3): Vec3 =>
  subtract(p, scale(plane.normal, 2 * heightOver(plane, p)));

/**
 * The mirror image of a direction in a plane.
 *
 * @example mirroredDirection(levelAt(10), [1, 0, 1]) // [1, 0, -1]
 */
export const mirroredDirection = (plane: Plane, d: Vec3): Vec3 =>
  subtract(d, scale(plane.normal, 2 * dot(plane.normal, d)));

/**
 * The line in which two planes meet: the point of it that is nearest to the origin, and its way, as long as the sine of the
 * angle between them.
 */
export function meeting(a: Plane, b: Plane): { readonly point: Vec3; readonly way: Vec3 } {
  const way = cross(a.normal, b.normal);
  const [ofA, ofB] = [dot(a.normal, a.point), dot(b.normal, b.point)];
  const sum = add(scale(cross(b.normal, way), ofA), scale(cross(way, a.normal), ofB));
  return { point: scale(sum, 1 / dot(way, way)), way };
}

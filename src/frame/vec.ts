/** A point or direction in space, mm. */
export type Vec3 = readonly [x: number, y: number, z: number];

/** A point or direction in a plane, mm. */
export type Vec2 = readonly [x: number, y: number];

/** A vector whose three parts are worked out alike. @example eachAxis((i) => Math.max(a[i], b[i])) */
export const eachAxis = <T>(part: (axis: 0 | 1 | 2) => T): readonly [x: T, y: T, z: T] => [
  part(0),
  part(1),
  part(2),
];

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

export const subtract = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

export const scale = (a: Vec3, by: number): Vec3 => [a[0] * by, a[1] * by, a[2] * by];

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/**
 * How long a difference in the plane or in space is. Square roots come out the same to the last bit in every engine, and
 * `Math.hypot` does not: what is drawn is settled by it.
 */
export const spanOf = (x: number, y: number, z = 0): number => Math.sqrt(x * x + y * y + z * z);

export const length = (a: Vec3): number => spanOf(a[0], a[1], a[2]);

/** The direction of a vector. @throws RangeError for the zero vector */
export const unit = (a: Vec3): Vec3 => {
  const size = length(a);
  if (!(size > 0)) throw new RangeError('the zero vector has no direction');
  return scale(a, 1 / size);
};

/** The angle between two directions, degrees, 0 to 180; stable for nearly parallel ones. */
export const angleDeg = (a: Vec3, b: Vec3): number =>
  (Math.atan2(length(cross(a, b)), dot(a, b)) * 180) / Math.PI;

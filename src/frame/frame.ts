import { rounded } from './rounded.js';
import { add, cross, dot, scale, subtract, unit, type Vec3 } from './vec.js';

/** A right-handed frame: an origin (mm) and three unit vectors, written in the frame it stands in. */
export interface Frame {
  readonly origin: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
}

export const WORLD: Frame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

/**
 * A right-handed frame from its z axis and the wished direction of x.
 *
 * @param origin mm
 * @param z any length
 * @param x any length; its part across z is kept
 * @example frame([0, 0, 20], [0, 0, 1], [1, 0, 0]).y // [0, 1, 0]
 */
export function frame(origin: Vec3, z: Vec3, x: Vec3): Frame {
  const up = unit(z);
  const along = unit(subtract(x, scale(up, dot(x, up))));
  return { origin, x: along, y: cross(up, along), z: up };
}

/** A point of the frame, written in the frame around it. */
export const pointOut = ({ origin, x, y, z }: Frame, p: Vec3): Vec3 => [
  origin[0] + (x[0] * p[0] + y[0] * p[1] + z[0] * p[2]),
  origin[1] + (x[1] * p[0] + y[1] * p[1] + z[1] * p[2]),
  origin[2] + (x[2] * p[0] + y[2] * p[1] + z[2] * p[2]),
];

/** A direction of the frame, written in the frame around it. */
export const directionOut = ({ x, y, z }: Frame, d: Vec3): Vec3 => [
  x[0] * d[0] + y[0] * d[1] + z[0] * d[2],
  x[1] * d[0] + y[1] * d[1] + z[1] * d[2],
  x[2] * d[0] + y[2] * d[1] + z[2] * d[2],
];

/** A point of the frame around, written in this frame. */
export const pointIn = (f: Frame, p: Vec3): Vec3 => directionIn(f, subtract(p, f.origin));

/** A direction of the frame around, written in this frame. */
export const directionIn = (f: Frame, d: Vec3): Vec3 => [dot(d, f.x), dot(d, f.y), dot(d, f.z)];

/** A frame that stands in `outer`, written in the frame around `outer`. */
export const frameOut = (outer: Frame, inner: Frame): Frame => ({
  origin: pointOut(outer, inner.origin),
  x: directionOut(outer, inner.x),
  y: directionOut(outer, inner.y),
  z: directionOut(outer, inner.z),
});

/** A frame that stands beside `outer`, written in `outer`. */
export const frameIn = (outer: Frame, inner: Frame): Frame => ({
  origin: pointIn(outer, inner.origin),
  x: directionIn(outer, inner.x),
  y: directionIn(outer, inner.y),
  z: directionIn(outer, inner.z),
});

/**
 * A frame freed of the last digits of its arithmetic, which change with the place of everything else: what stands in a board as
 * it stood is told by the same numbers. Origin to 1e-9 mm, axes to 1e-13.
 */
export const settled = ({ origin, x, y, z }: Frame): Frame => ({
  origin: settledPoint(origin),
  x: settledAxis(x),
  y: settledAxis(y),
  z: settledAxis(z),
});

/** A point freed of its last digits in the same way, mm. */
export const settledPoint = ([x, y, z]: Vec3): Vec3 => [settledLength(x), settledLength(y), settledLength(z)];

/** A length freed of its last digits in the same way, mm. */
export const settledLength = (mm: number): number => rounded(mm, 1e9);

/** A place found where outlines cross, freed of what rounding to their grid does to it, some 1e-8 mm: to 1e-6 mm. */
export const settledPlace = (mm: number): number => rounded(mm, 1e6);

/** Another figure likewise, such as an angle in degrees: 180 is 180 on every engine, and equal stresses are equal. */
export const settledFigure = (figure: number): number => rounded(figure, 1e9);

const settledAxis = ([x, y, z]: Vec3): Vec3 => [rounded(x, 1e13), rounded(y, 1e13), rounded(z, 1e13)];

/** A frame turned half round about its x: same origin and x, y and z reversed. */
export const turnedOver = (f: Frame): Frame => ({
  origin: f.origin,
  x: f.x,
  y: scale(f.y, -1),
  z: scale(f.z, -1),
});

/** The frame moved by a vector written in the frame around it. */
export const moved = (f: Frame, by: Vec3): Frame => ({ ...f, origin: add(f.origin, by) });

/**
 * The frame turned about an upright line, counter-clockwise seen from above.
 *
 * @param centre a point of the line, mm
 * @example turnedAbout(WORLD, [10, 0, 0], 90).origin // [10, -10, 0]
 */
export function turnedAbout(f: Frame, centre: Vec3, deg: number): Frame {
  const turn = (deg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const turned = ([x, y, z]: Vec3): Vec3 => [c * x - s * y, s * x + c * y, z];
  return {
    origin: add(centre, turned(subtract(f.origin, centre))),
    x: turned(f.x),
    y: turned(f.y),
    z: turned(f.z),
  };
}

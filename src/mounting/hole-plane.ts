import type { Vec2 } from '../frame/index.js';

/** How far apart two points are, mm. */
export const distance = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Area of a triangle, mm²; positive when its corners run counter-clockwise. */
export const signedArea = (a: Vec2, b: Vec2, c: Vec2): number =>
  ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2;

import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  angleDeg,
  cross,
  directionIn,
  directionOut,
  dot,
  type Frame,
  frame,
  frameIn,
  frameOut,
  length,
  moved,
  pointIn,
  pointOut,
  subtract,
  turnedOver,
  unit,
  type Vec3,
} from '../../src/frame/index.js';
import { seed } from '../properties/seed.js';

const part = fc.double({ min: -3000, max: 3000, noNaN: true });
const point = fc.tuple(part, part, part);
const direction = point.filter((p) => length(p) > 1);
const anyFrame = fc
  .tuple(point, direction, direction)
  .filter(([, z, x]) => length(cross(unit(z), unit(x))) > 0.01)
  .map(([origin, z, x]) => frame(origin, z, x));

const apart = (a: Vec3, b: Vec3): number => length(subtract(a, b));
const determinant = (f: Frame): number => dot(cross(f.x, f.y), f.z);

test('for all origins and directions a frame is right-handed, square and of unit vectors', () => {
  fc.assert(
    fc.property(anyFrame, (f) => {
      // right-handed: x × y = z, so the triple product is +1
      expect(determinant(f)).toBeCloseTo(1, 12);
      for (const [a, b] of [
        [f.x, f.y],
        [f.y, f.z],
        [f.z, f.x],
      ] as const) {
        expect(dot(a, b)).toBeCloseTo(0, 12);
        expect(length(a)).toBeCloseTo(1, 12);
      }
    }),
    seed(),
  );
});

test('a point taken out of a frame and back in is where it was', () => {
  fc.assert(
    fc.property(anyFrame, point, (f, p) => {
      expect(apart(pointIn(f, pointOut(f, p)), p)).toBeLessThan(1e-9);
      expect(apart(pointOut(f, pointIn(f, p)), p)).toBeLessThan(1e-9);
      expect(apart(directionIn(f, directionOut(f, p)), p)).toBeLessThan(1e-9);
    }),
    seed(),
  );
});

test('distances and angles are the same in every frame', () => {
  fc.assert(
    fc.property(anyFrame, direction, direction, (f, p, q) => {
      expect(apart(pointIn(f, p), pointIn(f, q))).toBeCloseTo(apart(p, q), 8);
      expect(angleDeg(directionIn(f, p), directionIn(f, q))).toBeCloseTo(angleDeg(p, q), 6);
    }),
    seed(),
  );
});

test('a frame in a frame says the same places as both one after the other', () => {
  fc.assert(
    fc.property(anyFrame, anyFrame, point, (outer, inner, p) => {
      expect(apart(pointOut(frameOut(outer, inner), p), pointOut(outer, pointOut(inner, p)))).toBeLessThan(
        1e-8,
      );
      const back = frameIn(outer, frameOut(outer, inner));
      expect(apart(back.origin, inner.origin)).toBeLessThan(1e-8);
      expect(apart(back.x, inner.x)).toBeLessThan(1e-12);
      expect(determinant(back)).toBeCloseTo(1, 12);
    }),
    seed(),
  );
});

test('a place seen from the other side keeps its length direction and its hand', () => {
  fc.assert(
    fc.property(anyFrame, (f) => {
      const over = turnedOver(f);
      expect(over.x).toEqual(f.x);
      expect(dot(over.z, f.z)).toBeCloseTo(-1, 12);
      expect(determinant(over)).toBeCloseTo(1, 12);
      expect(turnedOver(over).y).toEqual(f.y);
    }),
    seed(),
  );
});

test('a moved frame carries its points with it', () => {
  const f = frame([10, 20, 30], [0, 0, 2], [3, 0, 5]);
  expect(f.x).toEqual([1, 0, 0]);
  expect(f.y).toEqual([0, 1, 0]);
  expect(pointOut(moved(f, [1, 2, 3]), [4, 5, 6])).toEqual([15, 27, 39]);
});

test('nearly parallel directions still make an angle', () => {
  // atan 1e-9 in degrees; the arc cosine of the dot product would say 0
  expect(angleDeg([1, 0, 0], [1, 1e-9, 0])).toBeCloseTo((1e-9 * 180) / Math.PI, 15);
  expect(() => unit([0, 0, 0])).toThrow(RangeError);
});

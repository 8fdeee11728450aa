import { Clipper, EndType, JoinType } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ProfileError } from '../../src/errors.js';
import {
  arcs,
  area,
  bounds,
  circle,
  crossesItself,
  distanceTo,
  mirror,
  obround,
  offset,
  type Profile,
  perimeter,
  pointAlong,
  polygon,
  rectangle,
  reversed,
  rotate,
  segments,
  tessellate,
  transform2d,
} from '../../src/profile/index.js';
import { bracket, convexOutlines, notchedOutlines } from './outlines.js';

const total = (loops: readonly Profile[]): number => loops.reduce((sum, loop) => sum + area(loop), 0);
const sharp = (...points: readonly (readonly [number, number])[]): Profile =>
  polygon(points.map(([x, y]) => ({ x, y })));

/** Two squares of 30 mm joined by a neck 20 mm long and 8 mm wide. */
const dumbbell = sharp(
  ...([
    [0, 0],
    [30, 0],
    [30, 10],
    [50, 10],
    [50, 0],
    [80, 0],
  ] as const),
  ...([
    [80, 30],
    [50, 30],
    [50, 18],
    [30, 18],
    [30, 30],
    [0, 30],
  ] as const),
);
/** A square ring of 100 mm, 20 mm wide, open 10 mm at the right. */
const clasp = sharp(
  ...([
    [0, 0],
    [100, 0],
    [100, 45],
    [80, 45],
    [80, 20],
    [20, 20],
  ] as const),
  ...([
    [20, 80],
    [80, 80],
    [80, 55],
    [100, 55],
    [100, 100],
    [0, 100],
  ] as const),
);

test('a tenon smaller by c all round has the area A − P·c + π·c² of the Steiner formula', () => {
  const slot = obround({ length: 40, width: 10 });
  for (const c of [0.1, 1, 2.5, 4.9]) {
    const [tenon, ...others] = offset(slot, -c);
    expect(others).toEqual([]);
    expect(area(tenon!)).toBeCloseTo(378.539816339745 - 91.4159265358979 * c + Math.PI * c * c, 9);
    expect(tenon!.map((v) => v.bulge)).toEqual([0, 1, 0, 1]);
  }
  // The gap for glue at 0.1 mm.
  expect(area(slot) - total(offset(slot, -0.1))).toBeCloseTo(9.110177, 6);
});

test('a convex outline grown by c has the area A + P·c + π·c² and the perimeter P + 2π·c', () => {
  fc.assert(
    fc.property(convexOutlines, fc.double({ min: 0.01, max: 60, noNaN: true }), (outline, c) => {
      const grown = offset(outline, c);
      expect(grown).toHaveLength(1);
      expect(total(grown) / (area(outline) + perimeter(outline) * c + Math.PI * c * c)).toBeCloseTo(1, 9);
      expect(perimeter(grown[0]!)).toBeCloseTo(perimeter(outline) + 2 * Math.PI * c, 6);
    }),
    { numRuns: 200 },
  );
});

test('a convex outline grown and shrunk again by the same distance is the outline', () => {
  fc.assert(
    fc.property(convexOutlines, fc.double({ min: 0.01, max: 60, noNaN: true }), (outline, c) => {
      const back = offset(offset(outline, c)[0]!, -c);
      expect(back).toHaveLength(1);
      expect(area(back[0]!) / area(outline)).toBeCloseTo(1, 9);
      expect(perimeter(back[0]!)).toBeCloseTo(perimeter(outline), 6);
    }),
    { numRuns: 200 },
  );
});

test('every point of an offset outline is its distance away from the original, and the outline is simple', () => {
  fc.assert(
    fc.property(notchedOutlines, fc.double({ min: -45, max: 45, noNaN: true }), (outline, distance) => {
      fc.pre(Math.abs(distance) > 1e-3);
      for (const loop of offset(outline, distance)) {
        expect(crossesItself(loop)).toBe(false);
        for (const piece of segments(loop))
          for (const at of [0, 0.31, 0.5, 0.77])
            expect(distanceTo(outline, pointAlong(piece, at))).toBeCloseTo(Math.abs(distance), 5);
      }
    }),
    { numRuns: 200 },
  );
});

test('the polygon library finds the same area for the offset of the tessellated outline', () => {
  fc.assert(
    fc.property(notchedOutlines, fc.double({ min: -45, max: 45, noNaN: true }), (outline, distance) => {
      const loops = offset(outline, distance);
      const path = tessellate(outline, 0.0005).map(([x, y]) => ({ x: x * 1e5, y: y * 1e5 }));
      const other = Clipper.inflatePaths([path], distance * 1e5, JoinType.Round, EndType.Polygon, 2, 50);
      const expected = other.reduce((sum, loop) => sum + Clipper.area(loop), 0) / 1e10;
      // Both polygons stay within 0.001 mm of the outline along its length.
      const around = loops.reduce((sum, loop) => sum + perimeter(loop), 0);
      expect(Math.abs(total(loops) - expected)).toBeLessThan(0.002 * around + 0.01);
    }),
    { numRuns: 150 },
  );
});

test('scaled, mirrored, turned and reversed outlines offset alike', () => {
  for (const distance of [-26, -20, -8, -5, -1, 1, 5, 8, 10, 20]) {
    const plain = total(offset(bracket, distance));
    expect(total(offset(mirror(bracket, 'y'), distance))).toBeCloseTo(plain, 6);
    expect(total(offset(reversed(bracket), distance))).toBeCloseTo(-plain, 6);
    const placed = transform2d(bracket, { origin: [900, -50], x: [1.2, 1.6], y: [-1.6, 1.2] });
    expect(total(offset(placed, 2 * distance))).toBeCloseTo(4 * plain, 5);
  }
});

test('corners stay corners when shrinking, and a notch is rounded about its corner', () => {
  const [inner] = offset(sharp([0, 0], [100, 0], [100, 50], [50, 50], [50, 100], [0, 100]), -6);
  const [round, ...others] = arcs(inner!);
  expect(others).toEqual([]);
  expect(round!.radius).toBeCloseTo(6, 9);
  expect(round!.centre[0]).toBeCloseTo(50, 9);
  expect(round!.centre[1]).toBeCloseTo(50, 9);
  expect(inner).toHaveLength(7);
});

test('growing rounds a corner about it, or extends its sides until they meet', () => {
  const board = rectangle({ length: 40, width: 10 });
  const round = offset(board, 2);
  expect(arcs(round[0]!)).toHaveLength(4);
  for (const arc of arcs(round[0]!)) expect(arc.radius).toBeCloseTo(2, 9);
  const mitred = offset(board, 2, { corners: 'sharp' });
  expect(mitred[0]).toHaveLength(4);
  expect(bounds(mitred[0]!)).toEqual({ minX: -2, minY: -2, maxX: 42, maxY: 12 });
  expect(total(mitred)).toBeCloseTo(44 * 14, 9);
});

test('a neck narrower than twice the distance parts the outline in two', () => {
  expect(offset(dumbbell, -3)).toHaveLength(1);
  for (const distance of [-4, -5, -14]) {
    const parts = offset(dumbbell, distance);
    expect(parts).toHaveLength(2);
    expect(area(parts[0]!)).toBeCloseTo(area(parts[1]!), 9);
  }
  // A square of 30 mm less 5 mm all round, and toward the neck what two arcs of 5 mm leave of 5 × 8 mm: ∫√(25 − t²) from 0 to 4, twice.
  const besideArcs = 5 * 8 - (4 * 3 + 25 * Math.asin(4 / 5));
  expect(area(offset(dumbbell, -5)[0]!)).toBeCloseTo(400 + besideArcs, 6);
});

test('a neck exactly as wide as twice the distance, or a waist that only closes in a point, parts the outline in every direction', () => {
  const hourglass = sharp([0, 0], [60, 0], [34, 30], [60, 60], [0, 60], [26, 30]);
  for (let deg = 0; deg < 360; deg += 4.7)
    for (const outline of [dumbbell, hourglass]) {
      const parts = offset(rotate(outline, deg), -4);
      expect(parts).toHaveLength(2);
      expect(area(parts[0]!)).toBeCloseTo(area(parts[1]!), 6);
      for (const part of parts) expect(crossesItself(part)).toBe(false);
    }
});

test('an outline with no room left vanishes, also when it is exactly used up', () => {
  expect(offset(rectangle({ length: 40, width: 10 }), -5)).toEqual([]);
  expect(offset(rectangle({ length: 40, width: 10 }), -6)).toEqual([]);
  expect(offset(obround({ length: 40, width: 10 }), -5)).toEqual([]);
  expect(offset(circle({ diameter: 10 }), -5)).toEqual([]);
  expect(offset(circle({ diameter: 10 }), -7)).toEqual([]);
});

test('a round smaller than the distance becomes a sharp corner when shrinking, and a sharp notch when growing', () => {
  expect(arcs(offset(bracket, -12)[0]!).map((arc) => Math.round(arc.radius * 1e6) / 1e6)).toEqual([20, 8]);
  expect(arcs(offset(bracket, 8)[0]!).every((arc) => arc.sense === 'counter-clockwise')).toBe(true);
});

test('growing until a mouth closes leaves the gap inside as a loop the other way round', () => {
  expect(offset(clasp, 4)).toHaveLength(1);
  const [outer, gap, ...others] = offset(clasp, 6);
  expect(others).toEqual([]);
  expect(area(outer!)).toBeGreaterThan(100 * 100);
  expect(area(gap!)).toBeLessThan(0);
  expect(offset(clasp, 31)).toHaveLength(1);
});

test('a guide bush of 16 mm and a cutter of 10 mm make the template opening 6 mm larger and as round as the bush', () => {
  const [opening] = offset(obround({ length: 40, width: 10 }), (16 - 10) / 2);
  const box = bounds(opening!);
  expect(box.maxX - box.minX).toBeCloseTo(46, 9);
  expect(box.maxY - box.minY).toBeCloseTo(16, 9);
  for (const arc of arcs(opening!)) expect(arc.radius).toBeCloseTo(8, 9);
});

test('two sides that are almost in line keep their join', () => {
  // Found by a random search: the arc between them was so flat that it had become its chord, nearer than the distance.
  const kinked = sharp([0, 0], [80, 0], [80, 50], [40, 50.02], [0, 50]);
  const [grown] = offset(kinked, 5);
  expect(area(grown!)).toBeCloseTo(area(kinked) + perimeter(kinked) * 5 + Math.PI * 25, 6);
});

test('no distance is the outline itself, and a distance that is not a number is refused', () => {
  expect(offset(bracket, 0)).toEqual([bracket]);
  expect(() => offset(bracket, Number.NaN)).toThrow(ProfileError);
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  area,
  circle,
  grown,
  intersectRegion,
  pieces,
  polygonDeficit,
  type Region,
  rectangle,
  regionArea,
  regionBounds,
  regionOf,
  reversed,
  rotate,
  subtractRegion,
  unite,
} from '../../src/profile/index.js';
import { convexOutlines, notchedOutlines } from './outlines.js';

const box = (x: number, y: number, length: number, width: number): Region =>
  regionOf(rectangle({ x, y, length, width }));

test('for any two outlines the united area is the sum less the shared area', () => {
  fc.assert(
    fc.property(notchedOutlines, fc.oneof(notchedOutlines, convexOutlines), (one, other) => {
      const [a, b] = [regionOf(one), regionOf(other)];
      const shared = regionArea(intersectRegion(a, b));
      expect(regionArea(unite(a, b))).toBeCloseTo(regionArea(a) + regionArea(b) - shared, 3);
      expect(regionArea(subtractRegion(a, b))).toBeCloseTo(regionArea(a) - shared, 3);
      expect(regionArea(intersectRegion(b, a))).toBeCloseTo(shared, 3);
    }),
    { numRuns: 100 },
  );
});

test('the overlap of two boards 3 m long keeps its area to 1e-4 mm² and its corners to 1e-6 mm in every direction', () => {
  for (let deg = 0; deg < 360; deg += 11.3) {
    const turned = (x: number, y: number, length: number, width: number) =>
      regionOf(rotate(rectangle({ x, y, length, width }), deg));
    const shared = intersectRegion(turned(0, 0, 3000, 300), turned(1000, 100, 3000, 100.123));
    expect(Math.abs(regionArea(shared) - 2000 * 100.123)).toBeLessThan(1e-4);
    expect(shared).toHaveLength(1);
    expect(shared[0]).toHaveLength(4);
    const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
    const corners: readonly (readonly [number, number])[] = [
      [1000, 100],
      [3000, 100],
      [3000, 200.123],
      [1000, 200.123],
    ];
    for (const [x, y] of corners) {
      const nearest = Math.min(
        ...shared[0]!.map(([px, py]) => Math.hypot(px - (x * c - y * s), py - (x * s + y * c))),
      );
      expect(nearest).toBeLessThan(1e-6);
    }
  }
});

test('two boards that touch along an edge share nothing and unite to one piece, in every direction', () => {
  for (let deg = 0; deg < 90; deg += 3.7) {
    const a = regionOf(rotate(rectangle({ length: 3000, width: 300 }), deg));
    const b = regionOf(rotate(rectangle({ y: 300, length: 3000, width: 300 }), deg));
    expect(intersectRegion(a, b)).toEqual([]);
    expect(unite(a, b)).toHaveLength(1);
    expect(subtractRegion(a, a)).toEqual([]);
  }
});

test('a hole runs clockwise and is taken off', () => {
  const ring = subtractRegion(regionOf(circle({ diameter: 100 })), regionOf(circle({ diameter: 50 })));
  expect(ring).toHaveLength(2);
  const exact = Math.PI * (50 ** 2 - 25 ** 2);
  const facets = polygonDeficit(circle({ diameter: 100 })) - polygonDeficit(circle({ diameter: 50 }));
  expect(regionArea(ring)).toBeCloseTo(exact - facets, 5);
});

test('pieces keep each hole with the wood around it, also with an island in the hole', () => {
  const ring = subtractRegion(box(0, 0, 100, 100), box(20, 20, 60, 60));
  const all = unite(
    ring,
    subtractRegion(box(40, 40, 10, 10), box(44, 44, 2, 2)),
    subtractRegion(box(200, 0, 50, 50), box(210, 10, 5, 5)),
  );
  const areas = pieces(all).map((piece) => Math.round(regionArea(piece)));
  expect(areas.sort((a, b) => a - b)).toEqual([96, 2475, 6400]);
  expect(regionArea(all)).toBeCloseTo(96 + 2475 + 6400, 5);
});

test('a slot across a board leaves two pieces', () => {
  const left = subtractRegion(box(0, 0, 600, 90), box(290, -10, 20, 110));
  expect(pieces(left)).toHaveLength(2);
  expect(regionBounds(left)).toEqual({ minX: 0, minY: 0, maxX: 600, maxY: 90 });
});

test('the region of an outline does not depend on the way it runs', () => {
  const outline = circle({ diameter: 20 });
  expect(regionArea(regionOf(reversed(outline)))).toBeCloseTo(area(outline) - polygonDeficit(outline), 9);
});

test('nothing shared with nothing is nothing', () => {
  expect(intersectRegion([], box(0, 0, 1, 1))).toEqual([]);
  expect(unite()).toEqual([]);
  expect(pieces([])).toEqual([]);
});

test('a fine outline grown for looking keeps its area as near as the coarse arcs allow, on fewer corners', () => {
  const [round] = regionOf(circle({ diameter: 300, centre: [40, -20] }));
  expect(round!.length).toBeGreaterThan(200);
  for (const by of [2, 30]) {
    const [wide, ...others] = grown([round!], by, 0.2);
    expect(others).toEqual([]);
    expect(wide!.length).toBeLessThan(round!.length);
    const whole = Math.PI * (150 + by) ** 2;
    // both what is taken away and the arcs put in stay within 0.2 mm
    expect(regionArea([wide!])).toBeLessThan(whole * 1.001);
    expect(regionArea([wide!])).toBeGreaterThan(whole - 2 * Math.PI * (150 + by) * 0.4);
  }
});

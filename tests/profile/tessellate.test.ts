import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  area,
  circle,
  distanceTo,
  facetsPerCircle,
  loopArea,
  obround,
  polygon,
  polygonDeficit,
  rotate,
  tessellate,
} from '../../src/profile/index.js';
import { SAGITTA } from '../../src/tolerances.js';
import { bracket, notchedOutlines } from './outlines.js';

// A slot of 10 × 40 mm with N facets to the circle: A − (N/2)(d/2)²·sin(2π/N) − d(L − d), and (d/2)(1 − cos(π/N)).
test.each([
  [16, 2.00313, 0.0961],
  [32, 0.503688, 0.0241],
  [64, 0.126104, 0.006],
  [128, 0.031537, 0.0015],
])('a slot with %i facets to the circle lacks %f mm² at a sagitta of %f mm', (facets, deficit, sagitta) => {
  const slot = obround({ length: 40, width: 10 });
  // The exact sagitta of these facets, and a hair of room for rounding.
  const asked = 5 * (1 - Math.cos(Math.PI / facets)) + 1e-9;
  expect(asked).toBeCloseTo(sagitta, 4);
  expect(facetsPerCircle(5, asked)).toBe(facets);
  const facetted = tessellate(slot, asked);
  expect(facetted).toHaveLength(facets + 2);
  expect(area(slot) - loopArea(facetted)).toBeCloseTo(deficit, 5);
  expect(polygonDeficit(slot, asked)).toBeCloseTo(deficit, 5);
});

test('every corner of the polygon lies on the outline and no side leaves it by more than the sagitta', () => {
  fc.assert(
    fc.property(notchedOutlines, (outline) => {
      const points = tessellate(outline);
      points.forEach((point, i) => {
        const next = points[(i + 1) % points.length]!;
        expect(distanceTo(outline, point)).toBeLessThan(1e-9);
        const middle = [(point[0] + next[0]) / 2, (point[1] + next[1]) / 2] as const;
        expect(distanceTo(outline, middle)).toBeLessThanOrEqual(SAGITTA + 1e-9);
      });
      expect(area(outline) - loopArea(points)).toBeCloseTo(polygonDeficit(outline), 6);
    }),
    { numRuns: 60 },
  );
});

test('facets of a circle come in fours and depend on the radius alone', () => {
  for (const radius of [0.001, 0.5, 3, 4.7625, 5, 6.35, 60, 900]) {
    const count = facetsPerCircle(radius);
    expect(count % 4).toBe(0);
    expect(tessellate(circle({ diameter: 2 * radius }))).toHaveLength(count);
    if (radius > SAGITTA) expect(radius * (1 - Math.cos(Math.PI / count))).toBeLessThanOrEqual(SAGITTA);
  }
});

test('half and quarter circles have half and a quarter of the facets of their circle in every direction', () => {
  const tray = polygon(
    [
      [0, 0],
      [300, 0],
      [300, 90],
      [0, 90],
    ].map(([x, y]) => ({ x: x!, y: y!, radius: 5 })),
  );
  const slot = obround({ length: 40, width: 10, centre: [700, 0] });
  for (let deg = 0; deg < 360; deg += 0.7) {
    expect(tessellate(rotate(slot, deg))).toHaveLength(facetsPerCircle(5) + 2);
    expect(tessellate(rotate(tray, deg))).toHaveLength(facetsPerCircle(5) + 4);
  }
});

test('a tenon and its mortise of equal radius share every corner of their round ends', () => {
  const mortise = tessellate(rotate(obround({ length: 40, width: 10 }), 30));
  const tenon = tessellate(rotate(obround({ length: 36, width: 10 }), 30));
  expect(tenon).toHaveLength(mortise.length);
  // Shifted along the slot by half the difference of length, one end falls on the other.
  const [dx, dy] = [2 * Math.cos(Math.PI / 6), 2 * Math.sin(Math.PI / 6)];
  const end = mortise.slice(1, mortise.length / 2 + 1);
  end.forEach((point, i) => {
    expect(point[0] - tenon[i + 1]![0]).toBeCloseTo(dx, 9);
    expect(point[1] - tenon[i + 1]![1]).toBeCloseTo(dy, 9);
  });
});

test('an outline without arcs loses nothing', () => {
  expect(polygonDeficit(bracket.map((v) => ({ ...v, bulge: 0 })))).toBe(0);
});

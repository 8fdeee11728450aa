import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  areaInBox,
  circle,
  intersectRegion,
  rectangle,
  regionArea,
  regionOf,
  subtractRegion,
} from '../../src/profile/index.js';

const ring = subtractRegion(
  regionOf(rectangle({ length: 80, width: 50 })),
  regionOf(circle({ diameter: 20, centre: [40, 25] })),
);

test('for all boxes the area of a board with a hole in it is that of the polygon booleans', () => {
  const mm = fc.double({ min: -60, max: 120, noNaN: true });
  const size = fc.double({ min: 1, max: 90, noNaN: true });
  fc.assert(
    fc.property(mm, mm, size, size, (minX, minY, length, width) => {
      const box = { minX, minY, maxX: minX + length, maxY: minY + width };
      const loop = [
        [minX, minY],
        [box.maxX, minY],
        [box.maxX, box.maxY],
        [minX, box.maxY],
      ] as const;
      expect(areaInBox(ring, box)).toBeCloseTo(regionArea(intersectRegion(ring, [loop])), 4);
    }),
  );
});

test('a box that holds all of a region holds all its area', () => {
  const box = { minX: -200, maxX: 200, minY: -200, maxY: 200 };
  expect(areaInBox(ring, box)).toBeCloseTo(regionArea(ring), 9);
});

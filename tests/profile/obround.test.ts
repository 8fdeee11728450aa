import { expect, test } from 'vitest';
import { ProfileError } from '../../src/errors.js';
import { arcs, area, bounds, circle, obround, perimeter } from '../../src/profile/index.js';

test('a slot of 10 × 40 mm has the area π·d²/4 + d·(L − d) and the perimeter π·d + 2(L − d)', () => {
  const slot = obround({ length: 40, width: 10 });
  expect(area(slot)).toBeCloseTo(378.539816, 6);
  expect(perimeter(slot)).toBeCloseTo(91.415927, 6);
  expect(area(slot) * 30).toBeCloseTo(11356.19449, 5);
});

test('a slot of 1/2 × 1 3/4 in has 0.821350 in² and a perimeter of 4.070796 in', () => {
  const slot = obround({ length: 1.75 * 25.4, width: 0.5 * 25.4 });
  expect(area(slot) / 25.4 ** 2).toBeCloseTo(0.82135, 6);
  expect(perimeter(slot) / 25.4).toBeCloseTo(4.070796, 6);
});

test('a slot is four vertices with bulges 0, 1, 0, 1', () => {
  expect(obround({ length: 40, width: 10 }).map((v) => v.bulge)).toEqual([0, 1, 0, 1]);
});

test('a slot turned 90° stands upright about its centre', () => {
  const box = bounds(obround({ length: 40, width: 10, centre: [7, 100], directionDeg: 90 }));
  expect(box.minX).toBeCloseTo(2, 9);
  expect(box.maxX).toBeCloseTo(12, 9);
  expect(box.minY).toBeCloseTo(80, 9);
  expect(box.maxY).toBeCloseTo(120, 9);
});

test('a slot as long as it is wide is a drilled hole', () => {
  const hole = obround({ length: 10, width: 10, centre: [3, 4] });
  expect(hole).toEqual(circle({ diameter: 10, centre: [3, 4] }));
  expect(arcs(hole).map((arc) => arc.radius)).toEqual([5, 5]);
});

test.each([
  [{ length: 8, width: 10 }],
  [{ length: 40, width: 0 }],
  [{ length: Number.NaN, width: 10 }],
  [{ length: Infinity, width: 10 }],
])('a slot %o is refused with what was received', (size) => {
  expect(() => obround(size)).toThrow(ProfileError);
  expect(() => obround(size)).toThrow(`its length is ${Number(size.length.toFixed(3))} mm`);
});

test('a hole without a diameter is refused', () => {
  expect(() => circle({ diameter: -1 })).toThrow('its diameter is -1 mm');
});

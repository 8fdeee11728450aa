import fc from 'fast-check';
import { type Profile, polygon, rotate, translate } from '../../src/profile/index.js';

/** Rounded rectangles as boards have them, turned and moved; convex. */
export const convexOutlines: fc.Arbitrary<Profile> = fc
  .record({
    length: fc.double({ min: 40, max: 2400, noNaN: true }),
    width: fc.double({ min: 30, max: 600, noNaN: true }),
    radii: fc.tuple(radius(), radius(), radius(), radius()),
    deg: fc.double({ min: -180, max: 180, noNaN: true }),
    x: fc.double({ min: -1000, max: 1000, noNaN: true }),
  })
  .map(({ length, width, radii, deg, x }) => {
    const corners = [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ].map(([cx, cy], i) => ({ x: cx!, y: cy!, radius: radii[i]! }));
    return translate(rotate(polygon(corners), deg), [x, -x]);
  });

/** Star-shaped outlines with sharp and rounded corners that point out and in. */
export const notchedOutlines: fc.Arbitrary<Profile> = fc
  .array(fc.record({ reach: fc.double({ min: 40, max: 90, noNaN: true }), radius: radius() }), {
    minLength: 5,
    maxLength: 11,
  })
  .map((spokes) =>
    spokes.map(({ reach, radius }, i) => {
      const angle = (i / spokes.length) * 2 * Math.PI;
      return { x: reach * Math.cos(angle), y: reach * Math.sin(angle), radius: radius / 4 };
    }),
  )
  .map(polygon);

function radius(): fc.Arbitrary<number> {
  return fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 14, noNaN: true }));
}

/** The L of a bracket: 100 × 100 with a 50 × 50 notch rounded 8, other corners as given. */
export const bracket: Profile = polygon([
  { x: 0, y: 0, radius: 5 },
  { x: 100, y: 0, radius: 10 },
  { x: 100, y: 50 },
  { x: 50, y: 50, radius: 8 },
  { x: 50, y: 100, radius: 20 },
  { x: 0, y: 100 },
]);

import { expect, test } from 'vitest';
import { ProfileError } from '../../src/errors.js';
import {
  circle,
  crossesItself,
  obround,
  type Profile,
  rotate,
  tessellate,
  validProfile,
} from '../../src/profile/index.js';
import { bracket } from './outlines.js';

const loop = (...points: readonly (readonly [number, number, number?])[]): Profile =>
  points.map(([x, y, bulge = 0]) => ({ x, y, bulge }));

const codeOf = (profile: Profile): string | undefined => {
  try {
    validProfile(profile);
    return undefined;
  } catch (error) {
    return error instanceof ProfileError ? error.code : String(error);
  }
};

test('ordinary outlines are valid in every direction, also with tangent arcs', () => {
  for (let deg = 0; deg < 360; deg += 7.3)
    for (const outline of [bracket, obround({ length: 40, width: 10 }), circle({ diameter: 8 })])
      expect(codeOf(rotate(outline, deg, [300, 900]))).toBeUndefined();
});

test('a bow tie crosses itself', () => {
  const tie = loop([0, 0], [10, 10], [10, 0], [0, 11]);
  expect(crossesItself(tie)).toBe(true);
  expect(codeOf(tie)).toBe('profile-crosses-itself');
});

test('an arc that bulges through the opposite side crosses it, though the chords do not cross', () => {
  const shallow = loop([0, 0, -0.5], [40, 0], [40, 12], [0, 12]);
  const deep = loop([0, 0, -0.7], [40, 0], [40, 12], [0, 12]);
  // Rise of the arc: bulge × half the chord = 10 and 14 mm, beside a width of 12 mm.
  expect(crossesItself(shallow)).toBe(false);
  expect(crossesItself(deep)).toBe(true);
  expect(codeOf(deep)).toBe('profile-crosses-itself');
});

test('an arc that only touches the opposite side counts as meeting it', () => {
  expect(crossesItself(loop([0, 0, -0.6], [40, 0], [40, 12], [0, 12]))).toBe(true);
});

test('a side that folds back over the one before it is refused', () => {
  expect(crossesItself(loop([0, 0], [30, 0], [10, 0], [10, 20]))).toBe(true);
});

test('two hollows that face each other cross once their rises exceed the width, as the tessellated outline does', () => {
  for (const [bulge, crossing] of [
    [-0.9, false],
    [-1.1, true],
  ] as const) {
    // Rise = bulge × half the side: 13.5 and 16.5 mm from either side of 30 mm.
    const waist = loop([0, 0, 0.4], [30, 0, bulge], [30, 30, 0.2], [0, 30, bulge]);
    const facets = tessellate(waist).map(([x, y]) => ({ x, y, bulge: 0 }));
    expect(crossesItself(waist)).toBe(crossing);
    expect(crossesItself(facets)).toBe(crossing);
  }
});

test.each([
  ['one vertex', loop([0, 0]), 'profile-too-few-vertices'],
  ['a vertex that is not a number', loop([0, 0], [10, Number.NaN], [0, 10]), 'profile-not-finite'],
  ['an infinite bulge', loop([0, 0], [10, 0, Infinity], [0, 10]), 'profile-not-finite'],
  ['a repeated vertex', loop([0, 0], [10, 0], [10, 0], [0, 10]), 'profile-repeated-vertex'],
  ['the first vertex repeated at the end', loop([0, 0], [10, 0], [0, 10], [0, 0]), 'profile-repeated-vertex'],
  ['no area', loop([0, 0], [10, 0], [20, 0]), 'profile-no-area'],
  ['there and back on one arc', loop([0, 0, 0.5], [10, 0, -0.5]), 'profile-no-area'],
])('an outline with %s is refused', (_, outline, code) => {
  expect(codeOf(outline)).toBe(code);
});

test('the error says which outline and where', () => {
  expect(() => validProfile(loop([0, 0], [10, 0], [10, 0], [0, 10]), 'outline of left-side')).toThrow(
    'outline of left-side: vertex 2 at (10 mm, 0 mm)',
  );
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { InputError } from '../../src/errors.js';
import type { Vec2 } from '../../src/frame/index.js';
import { type Say, speaker } from '../../src/length/index.js';
import { fromDistances } from '../../src/mounting/hole-distances.js';
import { boltCircle, fromPoints, type HolePattern } from '../../src/mounting/hole-pattern.js';

const above = { mirror: 'as-seen-from-above' } as const;
const apart = (a: Vec2, b: Vec2) => Math.hypot(a[0] - b[0], a[1] - b[1]);
const at = (pattern: HolePattern) => pattern.holes.map((hole) => hole.at);
const area = ([[ax, ay], [bx, by], [cx, cy]]: readonly [Vec2, Vec2, Vec2]) =>
  ((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) / 2;
const three = (pattern: HolePattern) => at(pattern).slice(0, 3) as unknown as readonly [Vec2, Vec2, Vec2];

/** Every distance between named points, written as a person would. */
const measuredText = (points: readonly (readonly [string, Vec2])[], add = (_i: number) => 0) =>
  points
    .flatMap(([a, p], i) => points.slice(i + 1).map(([b, q]) => [`${a}-${b}`, apart(p, q)] as const))
    .map(([pair, size], i) => `${pair} ${(size + add(i)).toFixed(9)}`)
    .join('; ');

test('three holes measured 98.5, 112 and 87.25 mm apart lie where trilateration puts them', () => {
  // x = (d12² + d13² − d23²) / 2 d12, y = √(d13² − x²); Heron; R = abc / 4K
  const pattern = fromDistances('1-2 98.5; 1-3 112; 2-3 87.25', above);
  const [p, q, r] = three(pattern);
  const along: Vec2 = [(q[0] - p[0]) / 98.5, (q[1] - p[1]) / 98.5];
  const [dx, dy] = [r[0] - p[0], r[1] - p[1]];
  expect(dx * along[0] + dy * along[1]).toBeCloseTo(74.282678, 6);
  expect(dy * along[0] - dx * along[1]).toBeCloseTo(83.821738, 6);
  expect(area(three(pattern))).toBeCloseTo(4128.220608, 6);
  for (const hole of at(pattern)) expect(Math.hypot(...hole)).toBeCloseTo(58.290368, 6);
  // nothing was measured twice, so there is no error to tell, and it says so
  expect(pattern.residual).toBeUndefined();
  const { what, remedy, missing } = pattern.assumed!;
  expect((what as (say: Say) => string)(speaker('mm'))).toMatch(
    /centre of the circle through the three holes, of diameter 116\.6 mm.*cannot be checked/,
  );
  expect(remedy).toMatch(/--hole-distances as c-1, c-2, c-3$/);
  expect(missing).toBe(3);
  expect(pattern.notes.join()).toContain('a mistake in one cannot be found');
});

test('three holes 100 mm apart lie 57.735027 mm from the cutter, the first one on X', () => {
  const pattern = fromDistances('a-b 100; b-c1 100; a-c1 100', above);
  expect(pattern.holes.map((hole) => hole.name)).toEqual(['a', 'b', 'c1']);
  for (const hole of at(pattern)) expect(Math.hypot(...hole)).toBeCloseTo(57.735027, 6);
  expect(pattern.holes[0]!.at[1]).toBeCloseTo(0, 9);
  expect(pattern.holes[0]!.at[0]).toBeGreaterThan(0);
  const turned = fromDistances('a-b 100; b-c1 100; a-c1 100', { ...above, turnDeg: 90 });
  expect(turned.holes[0]!.at[1]).toBeCloseTo(57.735027, 6);
});

test('a rectangle of 80 × 60 has its cutter where the diagonals of 100 cross', () => {
  const text = '1-2 80; 2-3 60; 3-4 80; 4-1 60; 1-3 100; 2-4 100';
  const pattern = fromDistances(text, above);
  for (const hole of at(pattern)) expect(Math.hypot(...hole)).toBeCloseTo(50, 6);
  expect(area(three(pattern))).toBeCloseTo(2400, 5);
  expect(pattern.residual).toBeLessThan(1e-6);
  expect(pattern.notes.join()).not.toContain('a mistake in one');
});

test('the mirror option turns the numbers the other way round and says so', () => {
  const text = '1-2 98.5; 1-3 112; 2-3 87.25';
  const [straight, mirrored] = [fromDistances(text, above), fromDistances(text, { mirror: 'mirrored' })];
  expect(area(three(straight))).toBeGreaterThan(0);
  expect(area(three(mirrored))).toBeCloseTo(-area(three(straight)), 6);
  expect(straight.notes.join()).toContain('1, 2, 3 run counter-clockwise seen from above');
  expect(mirrored.notes.join()).toContain('1, 2, 3 run clockwise seen from above');
});

test('a measured cutter centre is used, and the note says so', () => {
  // two holes 30 and 40 mm from the cutter at a right angle
  const pattern = fromDistances('c-1 30; c-2 40; 1-2 50', above);
  expect(pattern.holes.map((hole) => hole.name)).toEqual(['1', '2']);
  expect(pattern.holes[0]!.at).toEqual([expect.closeTo(30, 9), expect.closeTo(0, 9)]);
  expect(pattern.holes[1]!.at).toEqual([expect.closeTo(0, 9), expect.closeTo(40, 9)]);
  expect(pattern.notes[0]).toBe('the centre of the cutter is the measured point c');
});

test('the cutter may lie half way between two holes', () => {
  const pattern = fromDistances('c-1 50; c-2 50; 1-2 100; c-3 40; 1-3 64.0312424; 2-3 64.0312424', above);
  expect(at(pattern).map((hole) => Math.hypot(...hole))).toEqual([
    expect.closeTo(50, 5),
    expect.closeTo(50, 5),
    expect.closeTo(40, 5),
  ]);
});

/** Holes in turn about the cutter, 30 to 90 mm from it, never two of them near each other. */
const holes = fc.integer({ min: 4, max: 7 }).chain((count) =>
  fc
    .array(fc.tuple(fc.integer({ min: 300, max: 900 }), fc.integer({ min: -100, max: 100 })), {
      minLength: count,
      maxLength: count,
    })
    .map((polar) =>
      polar.map(([radius, turn], i): Vec2 => {
        const angle = ((i + turn / 500) * 2 * Math.PI) / count;
        return [(radius / 10) * Math.cos(angle), (radius / 10) * Math.sin(angle)];
      }),
    ),
);

test('for all patterns of four to seven holes every distance comes back, and the first three keep their hand', () => {
  fc.assert(
    fc.property(holes, (points) => {
      const named = points.map((p, i) => [String(i + 1), p] as const);
      const text = measuredText([['c', [0, 0]], ...named]);
      const pattern = fromDistances(text, above);
      const found = at(pattern);
      expect(pattern.residual).toBeLessThan(1e-5);
      points.forEach((p, i) => {
        expect(Math.abs(Math.hypot(...found[i]!) - Math.hypot(...p))).toBeLessThan(1e-4);
        points.forEach((q, j) => {
          expect(Math.abs(apart(found[i]!, found[j]!) - apart(p, q))).toBeLessThan(1e-4);
        });
      });
      if (Math.abs(area(three(pattern))) > 100) expect(area(three(pattern))).toBeGreaterThan(0);
    }),
    { numRuns: 200 },
  );
});

test('for all reading errors up to 0.2 mm the fitted holes stay within 0.5 mm of their distances', () => {
  const errors = fc.array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), { minLength: 28, maxLength: 28 });
  fc.assert(
    fc.property(holes, errors, (points, error) => {
      const named = points.map((p, i) => [String(i + 1), p] as const);
      const text = measuredText([['c', [0, 0]], ...named], (i) => error[i]!);
      const pattern = fromDistances(text, above);
      expect(pattern.residual).toBeLessThanOrEqual(0.5);
      const found = at(pattern);
      points.forEach((p, i) => {
        expect(Math.abs(Math.hypot(...found[i]!) - Math.hypot(...p))).toBeLessThan(0.7);
      });
    }),
    {
      numRuns: 100,
      // opposite holes: both distances to the middle read short, the one across read long
      examples: [[OPPOSITE, [0, -0.2, 0, -0.2, 0, 0, 0, 0, 0.2, ...Array<number>(19).fill(0)]]],
    },
  );
});

const OPPOSITE: Vec2[] = [
  [30, 0],
  [0, 30],
  [-30, 0],
  [0, -30],
];

test('a least-squares fit is no worse than the true pattern: its summed squared error is not above the reading errors', () => {
  const square = [
    ['1', [50, 0]],
    ['2', [0, 50]],
    ['3', [-50, 0]],
    ['4', [0, -50]],
  ] as const;
  const error = [0.2, -0.1, 0.15, -0.2, 0.05, 0.1];
  const pattern = fromDistances(
    measuredText(square, (i) => error[i]!),
    above,
  );
  const found = at(pattern);
  const sum = square
    .flatMap(([, p], i) =>
      square.slice(i + 1).map(([, q], k) => [apart(p, q), apart(found[i]!, found[i + 1 + k]!)]),
    )
    .reduce((total, [given, fitted], i) => total + (given! + error[i]! - fitted!) ** 2, 0);
  expect(sum).toBeLessThanOrEqual(error.reduce((total, each) => total + each ** 2, 0));
  expect(pattern.residual).toBeGreaterThan(0);
});

test('one distance read 10 mm wrong is refused and named', () => {
  const text = '1-2 80; 2-3 60; 3-4 80; 4-1 60; 1-3 110; 2-4 100';
  expect(() => fromDistances(text, above)).toThrow(InputError);
  expect(() => fromDistances(text, above)).toThrow(/contradict each other: 1-3 is 110 mm, .* 0\.5 mm/);
});

test.each([
  ['1-2 10; 1-3 20; 2-3 40', 'make no triangle'],
  ['1-2 10; 1-3 20; 2-3 30', 'make no triangle'],
  ['1-2 80; 2-3 60; 1-3 100; 3-4 80; 4-1 60', 'hole 4 is not fixed'],
  ['1-2 80; 2-3 60', 'no three points with all three distances'],
  ['1-2 eighty; 2-3 60; 1-3 100', "hole distance '1-2 eighty'"],
  ['1-2 -80; 2-3 60; 1-3 100', 'negative'],
  ['1-1 80', 'from 1 to itself'],
  ['80 60 100', 'write two names and a length'],
  ['  ', 'nothing is given'],
])('distances %s are refused: %s', (text, message) => {
  expect(() => fromDistances(text, above)).toThrow(InputError);
  expect(() => fromDistances(text, above)).toThrow(message);
});

test('holes off any one circle ask for the cutter to be measured', () => {
  const trapezium = [
    ['1', [0, 0]],
    ['2', [100, 0]],
    ['3', [100, 40]],
    ['4', [0, 70]],
  ] as const;
  expect(() => fromDistances(measuredText(trapezium), above)).toThrow(
    "measure three holes from the cutter's centre",
  );
  const measured = fromDistances(measuredText([['c', [50, 30]], ...trapezium]), above);
  expect(Math.hypot(...at(measured)[0]!)).toBeCloseTo(Math.hypot(50, 30), 5);
});

test('distances may be in inches and fractions', () => {
  const [inch, metric] = [
    fromDistances('1-2 3-1/2; 1-3 4 1/4; 2-3 88.9mm', { ...above, units: 'in' }),
    fromDistances('1-2 88.9; 1-3 107.95; 2-3 88.9', above),
  ];
  at(inch).forEach((hole, i) => {
    expect(apart(hole, at(metric)[i]!)).toBeLessThan(1e-9);
  });
});

test('a bolt circle has its holes at equal steps from its first direction', () => {
  const { holes } = boltCircle({ diameter: 100, count: 3, startDeg: 90 });
  // side of an inscribed equilateral triangle: R √3
  expect(apart(holes[0]!.at, holes[1]!.at)).toBeCloseTo(50 * Math.sqrt(3), 9);
  expect(apart(holes[1]!.at, holes[2]!.at)).toBeCloseTo(50 * Math.sqrt(3), 9);
  expect(holes[0]!.at).toEqual([expect.closeTo(0, 9), expect.closeTo(50, 9)]);
  expect(holes[1]!.at[0]).toBeLessThan(0);
});

test.each([
  [{ diameter: 0, count: 3 }, 'diameter is 0 mm'],
  [{ diameter: Number.NaN, count: 3 }, 'diameter is NaN mm'],
  [{ diameter: 90, count: 2.5 }, '2.5 holes'],
])('a hole circle of %o is refused', (of, message) => {
  expect(() => boltCircle(of)).toThrow(message);
});

test('points are read with their signs and units', () => {
  expect(at(fromPoints('40, 30; -40,30\n 0, -2 in'))).toEqual([
    [40, 30],
    [-40, 30],
    [0, -50.8],
  ]);
});

test.each([
  ['40 30', "hole 1: '40 30' is not a point"],
  ['1, 2; 3, x', "hole 2, '3, x'"],
  ['1, 2; 1, 2', 'holes 1 and 2 are in one place'],
  ['', 'nothing is given'],
])('points %s are refused', (text, message) => {
  expect(() => fromPoints(text)).toThrow(message);
});

test('a list may begin with what its bare numbers are in, and that wins', () => {
  const inInches = fromPoints('in: 1, 2; -1 1/2, 30 mm');
  expect(inInches.holes.map(({ at }) => at)).toEqual([
    [25.4, 50.8],
    [-38.1, 30],
  ]);
  expect(fromPoints('mm: 1, 2', 'in').holes[0]!.at).toEqual([1, 2]);
  const triangle = fromDistances('in: 1-2 3; 1-3 4; 2-3 5', above);
  const [a, b] = triangle.holes.map(({ at }) => at);
  expect(Math.hypot(a![0] - b![0], a![1] - b![1])).toBeCloseTo(3 * 25.4, 9);
  expect(() => fromPoints('cubits: 1, 2')).toThrow("begins with 'cubits:'; it may begin with mm: or in:");
});

import { expect, test } from 'vitest';
import {
  angleDeg,
  heightOver,
  leaning,
  levelAt,
  mirroredDirection,
  mirroredPoint,
  pointOut,
  turnedAbout,
  WORLD,
} from '../../src/frame/index.js';

/**
 * Compound legs worked out from tan²R = tan²a + tan²b and tan φ = tan a / tan b. Derived in public write-ups
 * (blackdogswoodshop.blogspot.com 2020/02; tinyshopww.blogspot.com 2020/05), worked out again by hand.
 */
test.each([
  { rake: 5, splay: 5, resultant: 7.0532, sightline: 45, length: 453.431 },
  { rake: 10, splay: 10, resultant: 14.0019, sightline: 45, length: 463.78 },
  { rake: 8, splay: 12, resultant: 14.2957, sightline: 33.4724, length: 464.38 },
  { rake: 10, splay: 15, resultant: 17.7842, sightline: 33.3474, length: 472.583 },
  { rake: 15, splay: 22, resultant: 25.8642, sightline: 33.5522, length: 500.094 },
])('a leg of rake $rake° and splay $splay° leans $resultant° along the sightline $sightline°', (row) => {
  const lean = leaning({ rakeDeg: row.rake, splayDeg: row.splay });
  expect(Math.abs(lean.resultantDeg - row.resultant)).toBeLessThan(5.1e-5);
  expect(Math.abs(lean.sightlineDeg - row.sightline)).toBeLessThan(5.1e-5);
  expect(Math.abs(450 * lean.lengthPerRise - row.length)).toBeLessThan(5.1e-4);
  expect(angleDeg(lean.up, [0, 0, 1])).toBeCloseTo(lean.resultantDeg, 9);
  // what each elevation shows is the angle it was given
  expect((Math.atan2(-lean.up[1], lean.up[2]) * 180) / Math.PI).toBeCloseTo(row.rake, 9);
  expect((Math.atan2(-lean.up[0], lean.up[2]) * 180) / Math.PI).toBeCloseTo(row.splay, 9);
});

/** Own vector calculation: resultant = atan √(tan²ρ + tan²σ). */
test.each([
  { rake: 4, splay: 4, resultant: 5.65 },
  { rake: 8, splay: 8, resultant: 11.24, sightline: 45 },
  { rake: 10, splay: 5, resultant: 11.14, sightline: 63.6 },
  { rake: 6.5, splay: 20, resultant: 20.88, sightline: 17.4 },
])(
  'elevations of $rake° and $splay° are $resultant° on the drill',
  ({ rake, splay, resultant, sightline }) => {
    const lean = leaning({ rakeDeg: rake, splayDeg: splay });
    expect(Math.abs(lean.resultantDeg - resultant)).toBeLessThan(0.0051);
    if (sightline !== undefined) expect(Math.abs(lean.sightlineDeg - sightline)).toBeLessThan(0.051);
  },
);

test('a part that leans one way only is plain trigonometry, and an upright one none', () => {
  const lean = leaning({ splayDeg: 30 });
  expect(lean.resultantDeg).toBeCloseTo(30, 12);
  expect(lean.lengthPerRise).toBeCloseTo(2 / Math.sqrt(3), 12);
  expect(leaning({})).toEqual(leaning({ rakeDeg: 0, splayDeg: 0 }));
  expect(leaning({}).lengthPerRise).toBe(1);
});

test('a mirror image lies as far behind the plane as the point before it', () => {
  const plane = { point: [1, 2, 3], normal: [0.6, 0, 0.8] } as const;
  const p = [10, -4, 7] as const;
  const image = mirroredPoint(plane, p);
  expect(heightOver(plane, image)).toBeCloseTo(-heightOver(plane, p), 12);
  mirroredPoint(plane, image).forEach((part, i) => {
    expect(part).toBeCloseTo(p[i]!, 12);
  });
  expect(mirroredDirection(levelAt(99), [1, 2, 3])).toEqual([1, 2, -3]);
});

test('a frame turned a quarter round an upright line carries x to y', () => {
  const turned = turnedAbout(WORLD, [10, 0, 0], 90);
  pointOut(turned, [10, 5, 7]).forEach((part, i) => {
    expect(part).toBeCloseTo([5, 0, 7][i]!, 12);
  });
  expect(turned.z).toEqual([0, 0, 1]);
});

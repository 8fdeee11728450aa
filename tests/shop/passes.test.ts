import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { passesOf, plungesOf } from '../../src/shop/index.js';

const sizes = fc.record({
  depth: fc.double({ min: 1, max: 80, noNaN: true }),
  cutter: fc.double({ min: 3, max: 20, noNaN: true }),
  turret: fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { maxLength: 4 }),
});

const turretOf = (heights: readonly number[]) => [0, ...heights.toSorted((a, b) => a - b)];

describe('passes', () => {
  test('none is deeper than half the cutter or 6 mm, and the last reaches the whole depth', () => {
    fc.assert(
      fc.property(sizes, ({ depth, cutter, turret }) => {
        const depths = passesOf(depth, cutter, turretOf(turret)).map((pass) => pass.depth);
        const bites = depths.map((at, i) => at - (depths[i - 1] ?? 0));
        expect(Math.max(...bites)).toBeLessThanOrEqual(Math.min(cutter / 2, 6) + 1e-5);
        expect(Math.min(...bites)).toBeGreaterThan(0);
        expect(depths.at(-1)).toBe(depth);
      }),
      { seed: 41, numRuns: 300 },
    );
  });

  test('every turret step that is not above the wood gives a pass, the whole depth less its height', () => {
    fc.assert(
      fc.property(sizes, ({ depth, cutter, turret }) => {
        const heights = turretOf(turret);
        const passes = passesOf(depth, cutter, heights);
        heights.forEach((height, i) => {
          const pass = passes.find(({ turretStep }) => turretStep === i + 1);
          if (depth - height > 1e-3) expect(pass?.depth).toBeCloseTo(depth - height, 9);
        });
      }),
      { seed: 42, numRuns: 300 },
    );
  });

  test('a mortise 14 mm deep with an 8 mm cutter and turret steps of 6 mm, by hand', () => {
    // 4 mm a pass at most: 2 and 8 and 14 are the turret's; 5 and 11 halve the ways between
    expect(passesOf(14, 8, [0, 6, 12]).map(({ depth, turretStep }) => [depth, turretStep])).toEqual([
      [2, 3],
      [5, undefined],
      [8, 2],
      [11, undefined],
      [14, 1],
    ]);
  });

  test('without a turret the passes are equal', () => {
    expect(passesOf(14, 8).map(({ depth }) => depth)).toEqual([3.5, 7, 10.5, 14]);
  });
});

describe('plunges', () => {
  test('both ends come first, and no bite is more than half a cutter', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 20, noNaN: true }),
        fc.double({ min: 0.01, max: 200, noNaN: true }),
        (cutter, run) => {
          const plunges = plungesOf(cutter + run, cutter);
          expect(plunges[0]).toBeCloseTo(-run / 2, 9);
          expect(plunges[1]).toBeCloseTo(run / 2, 9);
          const inOrder = plunges.toSorted((a, b) => a - b);
          const bites = inOrder.slice(1).map((at, i) => at - inOrder[i]!);
          expect(Math.max(...bites)).toBeLessThanOrEqual(cutter / 2 + 1e-5);
        },
      ),
      { seed: 43, numRuns: 300 },
    );
  });

  test('a mortise as long as the cutter is wide takes one plunge', () => {
    expect(plungesOf(8, 8)).toEqual([0]);
  });
});

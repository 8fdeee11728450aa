import fc from 'fast-check';
import { expect, test } from 'vitest';
import { runningSteps } from '../../src/drawing/sheet/running-steps.js';
import { spread } from '../../src/drawing/sheet/spread.js';
import { stepOf } from '../../src/length/index.js';

const places = fc
  .array(fc.double({ min: 0, max: 900, noNaN: true }), { minLength: 1, maxLength: 20 })
  .map((all) => all.toSorted((a, b) => a - b));

test.each(['mm', 'in', 'in/16', 'in/64', 'in/1000'] as const)(
  'running figures are right to half a step, and parts are their differences: %s',
  (rule) => {
    const step = stepOf(rule);
    fc.assert(
      fc.property(places, (all) => {
        const stops = [0, ...all];
        const { running, parts } = runningSteps(stops, rule);
        running.forEach((steps, i) => {
          expect(Math.abs(steps * step - stops[i]!)).toBeLessThanOrEqual(step / 2 + 1e-9);
        });
        expect(parts.reduce((sum, part) => sum + part, 0)).toBe(running.at(-1));
        parts.forEach((part, i) => {
          expect(Math.abs(part * step - (stops[i + 1]! - stops[i]!))).toBeLessThanOrEqual(step + 1e-9);
        });
      }),
      { seed: 3, numRuns: 300 },
    );
  },
);

test('crowded figures are spread to their distance, keep their order and their mean', () => {
  fc.assert(
    fc.property(places, fc.double({ min: 0.5, max: 8, noNaN: true }), (all, apart) => {
      const spots = spread(all, apart);
      spots.slice(1).forEach((spot, i) => {
        expect(spot - spots[i]!).toBeGreaterThanOrEqual(apart - 1e-9);
      });
      const mean = (of: readonly number[]) => of.reduce((sum, one) => sum + one, 0) / of.length;
      expect(mean(spots)).toBeCloseTo(mean(all), 6);
    }),
    { seed: 4, numRuns: 300 },
  );
});

test('figures that stand far enough apart are not moved', () => {
  expect(spread([0, 5, 11], 4)).toEqual([0, 5, 11]);
});

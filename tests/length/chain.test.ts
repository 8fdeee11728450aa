import fc from 'fast-check';
import { expect, test } from 'vitest';
import { closedChain } from '../../src/length/index.js';

const STEP: Readonly<Record<'mm' | 'in' | 'in/16' | 'in/64' | 'in/1000', number>> = {
  mm: 0.1,
  in: 25.4 / 32,
  'in/16': 25.4 / 16,
  'in/64': 25.4 / 64,
  'in/1000': 0.0254,
};
const RULES = Object.keys(STEP) as (keyof typeof STEP)[];
const chains = fc.array(fc.double({ min: 0, max: 3000, noNaN: true }), { minLength: 1, maxLength: 24 });

test.each(RULES)('rounded parts add up to the rounded whole: %s', (units) => {
  fc.assert(
    fc.property(chains, (parts) => {
      const chain = closedChain(parts, units);
      const whole = parts.reduce((sum, part) => sum + part, 0);
      expect(chain.steps.every(Number.isInteger)).toBe(true);
      expect(chain.steps.reduce((sum, part) => sum + part, 0)).toBe(chain.totalSteps);
      expect(Math.abs(chain.totalSteps * STEP[units] - whole)).toBeLessThanOrEqual(STEP[units] / 2 + 1e-9);
    }),
    { seed: 20, numRuns: 400 },
  );
});

test.each(RULES)('no part is moved by a whole step, and none goes below nothing: %s', (units) => {
  fc.assert(
    fc.property(chains, (parts) => {
      const chain = closedChain(parts, units);
      const errors = parts.map((part, at) => Math.abs(chain.steps[at]! * STEP[units] - part));
      expect(Math.max(...errors)).toBeLessThan(STEP[units] + 1e-9);
      expect(chain.error).toBeCloseTo(Math.max(...errors), 9);
      expect(Math.min(...chain.steps)).toBeGreaterThanOrEqual(0);
    }),
    { seed: 21, numRuns: 400 },
  );
});

test('no other choice of whole steps that adds up has a smaller largest error', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 50, noNaN: true }), { minLength: 1, maxLength: 7 }),
      (parts) => {
        const chain = closedChain(parts, 'in');
        // every way of rounding each part down or up
        const others = Array.from({ length: 2 ** parts.length }, (_, mask) =>
          parts.map((part, at) => Math.floor(part / STEP.in) + ((mask >> at) & 1)),
        ).filter((steps) => steps.reduce((sum, one) => sum + one, 0) === chain.totalSteps);
        const worst = (steps: readonly number[]) =>
          Math.max(...steps.map((one, at) => Math.abs(one * STEP.in - parts[at]!)));
        expect(others.length).toBeGreaterThan(0);
        expect(chain.error).toBeLessThanOrEqual(Math.min(...others.map(worst)) + 1e-9);
      },
    ),
    { seed: 22, numRuns: 100 },
  );
});

test('three thirds of 100 mm add up to 100.0 mm', () => {
  // rounded one by one they are 33.3 + 33.3 + 33.3 = 99.9
  const { parts, total } = closedChain([100 / 3, 100 / 3, 100 / 3], 'mm');
  expect(parts).toEqual([33.4, 33.3, 33.3]);
  expect(total).toBe(100);
});

test('a part that is no length is a fault', () => {
  expect(() => closedChain([1, Number.NaN], 'mm')).toThrow(RangeError);
  expect(() => closedChain([-1], 'mm')).toThrow(RangeError);
});

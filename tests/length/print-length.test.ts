import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  fixed,
  forRouter,
  parseLength,
  printFine,
  printFit,
  printLength,
  printTool,
  rulesOf,
  speaker,
  trimmed,
  withFraction,
} from '../../src/length/index.js';
import { seed } from '../properties/seed.js';

const size = fc.double({ min: -5000, max: 5000, noNaN: true });

test('millimetres are printed to 0.1', () => {
  expect(printLength(57.5, { units: 'mm' })).toBe('57.5 mm');
  expect(printLength(230, { units: 'mm' })).toBe('230.0 mm');
  expect(printLength(-0.04, { units: 'mm' })).toBe('0.0 mm');
});

test('inches are printed to the nearest 1/32, reduced, or as fine as the shop works', () => {
  // 2 17/64 in = 2.265625 × 25.4 = 57.546875 mm; half way between 2 8/32 and 2 9/32
  expect(printLength(57.546875, { units: 'in/64' })).toBe('2-17/64"');
  expect(printLength(57.546875 + 0.12, { units: 'in/64' })).toBe('2-17/64"');
  expect(printLength(57.546875 + 0.12, { units: 'in' })).toBe('2-9/32"');
  expect(printLength(57.546875 - 0.12, { units: 'in' })).toBe('2-1/4"');
  expect(printLength(57.546875 - 0.12, { units: 'in/16' })).toBe('2-1/4"');
  expect(printLength(9.525, { units: 'in' })).toBe('3/8"');
  expect(printLength(228.6, { units: 'in' })).toBe('9"');
  expect(printLength(-9.525, { units: 'in' })).toBe('-3/8"');
  expect(printLength(-0.05, { units: 'in' })).toBe('0"');
});

test('what is set on the router is printed in thousandths, and so is the air of a fit; in mm as ever', () => {
  // 1.218 in = 30.9372 mm, as a calculator has it
  expect(printLength(30.9372, { units: 'in/1000' })).toBe('1.218"');
  expect(printFit(0.1, { units: 'in/16' })).toBe('0.004"');
  expect(printFit(0.05, { units: 'mm' })).toBe('0.05 mm');
  for (const rule of ['in', 'in/16', 'in/64'] as const) {
    expect(forRouter(rule)).toBe('in/1000');
    expect([speaker(rule).setting(12.7), speaker(rule).fit(1)]).toEqual(['0.500"', '0.039"']);
  }
  expect(forRouter('mm')).toBe('mm');
});

test('a cutter is called by the fraction it is sold by, however coarse the rule, and a metric one in thousandths', () => {
  expect(printTool((25.4 * 23) / 64, { units: 'in/16' })).toBe('23/64"');
  expect(printTool(6.35, { units: 'in' })).toBe('1/4"');
  expect(printTool(8, { units: 'in' })).toBe('0.315"');
  expect(printTool(8, { units: 'mm' })).toBe('8.0 mm');
});

test('a finest fraction is for inches, and both ways for drawings that have both', () => {
  expect(withFraction('in', '1/64')).toBe('in/64');
  expect(withFraction('in/64', '1/32')).toBe('in');
  expect(withFraction('dual', '1/16')).toBe('dual/16');
  expect(withFraction('mm', '1/16')).toBe('mm');
  expect(withFraction('in/16', undefined)).toBe('in/16');
  expect(rulesOf('dual/16')).toEqual(['mm', 'in/16']);
  expect(rulesOf(forRouter('dual/16'))).toEqual(['mm', 'in/1000']);
});

test('what was printed reads back within half of the step it was rounded to', () => {
  const within = { mm: 0.05, in: 25.4 / 64, 'in/16': 25.4 / 32, 'in/64': 25.4 / 128, 'in/1000': 0.0127 };
  for (const units of ['mm', 'in', 'in/16', 'in/64', 'in/1000'] as const)
    fc.assert(
      fc.property(size, (mm) => {
        const back = parseLength(printLength(mm, { units }), { units: 'mm' });
        expect(Math.abs(back - mm)).toBeLessThanOrEqual(within[units] + 1e-9);
      }),
      { numRuns: 500 },
    );
});

test('a fine length keeps what a rule cannot show, and reads back within its own step', () => {
  expect(printFine(0.05, { units: 'mm' })).toBe('0.05 mm');
  expect(printFine(230, { units: 'mm' })).toBe('230 mm');
  expect(printFine(230, { units: 'in' })).toBe('9.0551"');
  expect(printFine(9.525, { units: 'in' })).toBe('3/8"');
  expect(printFine(0.05, { units: 'in' })).toBe('0.002"');
  fc.assert(
    fc.property(size, (mm) => {
      const back = parseLength(printFine(mm, { units: 'mm' }), { units: 'mm' });
      expect(Math.abs(back - mm)).toBeLessThanOrEqual(0.0005 + 1e-9);
      const inches = parseLength(printFine(mm, { units: 'in' }), { units: 'mm' });
      expect(Math.abs(inches - mm)).toBeLessThanOrEqual(0.00005 * 25.4 + 1e-9);
    }),
    { numRuns: 500 },
  );
});

test('sizes that differ by the last bits of a sum print alike, half of a decimal away from 0', () => {
  expect(fixed(5.749999999999999, 1)).toBe('5.8');
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 20_000 }),
      fc.integer({ min: 0, max: 4 }),
      fc.nat(6),
      (whole, decimals, bits) => {
        // as a person rounds the decimal: the worst place there is, half way between two
        const text = fixed((whole + 0.5) / 10 ** decimals, decimals);
        expect(text).toBe(((whole + 1) / 10 ** decimals).toFixed(decimals));
        const off = (whole + 0.5) / 10 ** decimals;
        for (const way of [1, -1])
          expect(fixed(off * (1 + way * bits * Number.EPSILON), decimals)).toBe(text);
        expect(fixed(-off, decimals)).toBe(`-${text}`);
      },
    ),
    seed(500),
  );
});

test('a number is written with fixed decimals, no minus before nothing and no exponent', () => {
  expect(fixed(-0.0004, 3)).toBe('0.000');
  expect(fixed(-0, 0)).toBe('0');
  expect(fixed(1e-9, 3)).toBe('0.000');
  expect(fixed(1.5e21, 2)).toBe('1500000000000000000000.00');
  expect(trimmed(100, 0)).toBe('100');
  expect(trimmed(57.5, 3)).toBe('57.5');
  expect(() => fixed(Number.NaN, 1)).toThrow(RangeError);
  expect(() => fixed(Number.POSITIVE_INFINITY, 1)).toThrow(RangeError);
  fc.assert(
    fc.property(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.integer({ min: 0, max: 6 }),
      (value, decimals) => {
        const text = fixed(value, decimals);
        expect(text).toMatch(decimals === 0 ? /^-?\d+$/ : new RegExp(`^-?\\d+\\.\\d{${decimals}}$`));
        expect(text).not.toMatch(/^-[0.]+$/);
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(
          0.5 * 10 ** -decimals + Math.abs(value) * 1e-15,
        );
      },
    ),
  );
});

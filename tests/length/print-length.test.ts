import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fixed, parseLength, printFine, printLength, trimmed, type Units } from '../../src/length/index.js';
import { seed } from '../properties/seed.js';

const size = fc.double({ min: -5000, max: 5000, noNaN: true });

test('millimetres are printed to 0.1', () => {
  expect(printLength(57.5, { units: 'mm' })).toBe('57.5 mm');
  expect(printLength(230, { units: 'mm' })).toBe('230.0 mm');
  expect(printLength(-0.04, { units: 'mm' })).toBe('0.0 mm');
});

test('inches are printed to the nearest 1/64, reduced', () => {
  // 2 17/64 in = 2.265625 × 25.4 = 57.546875 mm
  expect(printLength(57.546875, { units: 'in' })).toBe('2-17/64"');
  expect(printLength(57.546875 + 0.12, { units: 'in' })).toBe('2-17/64"');
  expect(printLength(57.546875 - 0.12, { units: 'in' })).toBe('2-17/64"');
  expect(printLength(57.546875 + 0.09, { units: 'in' })).toBe('2-17/64"');
  expect(printLength(9.525, { units: 'in' })).toBe('3/8"');
  expect(printLength(228.6, { units: 'in' })).toBe('9"');
  expect(printLength(-9.525, { units: 'in' })).toBe('-3/8"');
  expect(printLength(-0.05, { units: 'in' })).toBe('0"');
});

test('what was printed reads back within half of the step it was rounded to', () => {
  const within: Readonly<Record<Units, number>> = { mm: 0.05, in: 25.4 / 128 };
  for (const units of ['mm', 'in'] as const)
    fc.assert(
      fc.property(size, (mm) => {
        const back = parseLength(printLength(mm, { units }), { units: 'mm' });
        expect(Math.abs(back - mm)).toBeLessThanOrEqual(within[units] + 1e-9);
      }),
      { numRuns: 500 },
    );
});

test('inches printed without the remainder are within half of 1/64, with it within 0.005 mm', () => {
  fc.assert(
    fc.property(size, (mm) => {
      const printed = printLength(mm, { units: 'in' });
      const [fraction] = printed.split(' (');
      const line = parseLength(fraction!, { units: 'mm' });
      expect(Math.abs(line - mm)).toBeLessThanOrEqual(25.4 / 128 + 1e-9);
      if (fraction !== printed)
        expect(Math.abs(parseLength(printed, { units: 'mm' }) - mm)).toBeLessThanOrEqual(0.005 + 1e-9);
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

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { speaker } from '../../src/length/index.js';

const mm = speaker('mm');
const inches = speaker('in');

test('a figure and its limit 0.04 mm apart read apart, and so does what is lacking', () => {
  expect(mm.lengths(31.04, 31, 0.04)).toEqual(['31.04 mm', '31.00 mm', '0.04 mm']);
  // 31.04 / 25.4 and 31 / 25.4 by a calculator; both are 1-7/32" to the nearest 32nd
  expect(inches.lengths(31.04, 31)).toEqual(['1.222"', '1.220"']);
  expect([inches.length(31.04), inches.length(31)]).toEqual(['1-7/32"', '1-7/32"']);
});

test('figures a rule tells apart stay as a rule shows them', () => {
  expect(mm.lengths(41.5, 31)).toEqual(['41.5 mm', '31.0 mm']);
  expect(mm.fines(0.05, 0.1)).toEqual(['0.05 mm', '0.1 mm']);
  expect(inches.lengths(25.4, 12.7)).toEqual(['1"', '1/2"']);
});

test('equal figures may read alike, rounding noise included', () => {
  expect(mm.lengths(31, 31)).toEqual(['31.0 mm', '31.0 mm']);
  expect(mm.lengths(31, 31 + 1e-9)).toEqual(['31.0 mm', '31.0 mm']);
});

test('fits in inches that differ by less than the fourth decimal read apart', () => {
  expect([inches.fine(0.1), inches.fine(0.0985)]).toEqual(['0.0039"', '0.0039"']);
  const [measured, limit] = inches.fines(0.0985, 0.1);
  expect(measured).not.toBe(limit);
});

test('for any two lengths a hundredth of a millimetre apart or more, in either unit, the texts differ', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 3000, noNaN: true }),
      fc.double({ min: 0.01, max: 0.2, noNaN: true }),
      fc.constantFrom(mm, inches),
      fc.boolean(),
      (length, more, say, fine) => {
        const [a, b] = fine ? say.fines(length, length + more) : say.lengths(length, length + more);
        expect(a).not.toBe(b);
      },
    ),
  );
});

import { expect, test } from 'vitest';
import { parsePrintScale, printScaleWords } from '../../src/drawing/index.js';
import { InputError } from '../../src/errors.js';

test('two factors are read, along the short and the long side of the paper', () => {
  expect(parsePrintScale('0.994x1.002')).toEqual({ short: 0.994, long: 1.002 });
  expect(parsePrintScale(' 1 X 0.9985 ')).toEqual({ short: 1, long: 0.9985 });
});

test('what is no pair of factors, or more than 10 % off, is refused with the form that is wanted', () => {
  for (const text of ['', '0.994', '0.994,1.002', '99.4x100.2', '0.89x1', '1x1.11', '1x-1', 'NaNx1'])
    expect(() => parsePrintScale(text), text).toThrow(InputError);
  expect(() => parsePrintScale('99x100')).toThrow(/0\.994x1\.002/);
});

test('factors are printed without zeros at their ends', () => {
  expect(printScaleWords({ short: 0.994, long: 1 })).toBe('0.994 × 1');
});

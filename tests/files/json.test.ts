import fc from 'fast-check';
import { expect, test } from 'vitest';
import { json } from '../../src/files/summary/json.js';

test('what is written reads back as what was given', () => {
  const given = {
    design: 'stool',
    boards: [{ id: 'seat', blank: { length: 400.5 } }],
    notes: [],
    none: null,
  };
  expect(JSON.parse(json(given))).toEqual(given);
});

test('a length off by rounding is written as the length meant', () => {
  expect(json([0.1 + 0.2, 57.49999999999999, 12])).toBe('[\n  0.3,\n  57.5,\n  12\n]\n');
});

test('nothing is written with an exponent or as minus zero', () => {
  expect(json([-0, 1e-9, -1e-9, 1.5e-6, 1e21])).toBe(
    '[\n  0,\n  0,\n  0,\n  0.000002,\n  1000000000000000000000\n]\n',
  );
});

test('for all numbers a workshop can meet the written one is within half a millionth', () => {
  fc.assert(
    fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
      const text = json(value).trim();
      expect(text).toMatch(/^-?\d+(\.\d{1,6})?$/);
      expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.5e-6 + 1e-9);
    }),
  );
});

test('quotes, inch marks and line breaks in a name survive', () => {
  const name = 'knob 3/8" "star"\n\\ ×';
  expect(JSON.parse(json({ name }))).toEqual({ name });
});

test('a property that is not there is left out', () => {
  expect(json({ solid: undefined, id: 'seat' })).toBe('{\n  "id": "seat"\n}\n');
});

test('a number that is not finite is a fault and never written', () => {
  expect(() => json({ volumeMm3: Number.NaN })).toThrow(RangeError);
});

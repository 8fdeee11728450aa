import fc from 'fast-check';
import { expect, test } from 'vitest';
import { table, wrap } from '../../src/cli/around/table.js';

const word = fc.string({ minLength: 1, maxLength: 9, unit: fc.constantFrom(...'abc°½'.split('')) });
const cell = fc.array(word, { maxLength: 12 }).map((words) => words.join(' '));

test('columns are aligned and lines end without blanks', () => {
  expect(
    table(
      [
        ['a', 'bb', ''],
        ['aaa', 'b', 'c'],
      ],
      80,
    ),
  ).toBe('a    bb\naaa  b   c\n');
});

test('every word of a cell is printed, in order, and no line is wider than asked', () => {
  fc.assert(
    fc.property(cell, fc.integer({ min: 10, max: 60 }), (text, width) => {
      const lines = wrap(text, width);
      expect(lines.join(' ')).toBe(text);
      for (const line of lines) expect([...line].length).toBeLessThanOrEqual(width);
    }),
  );
});

test('a table of three columns fits every width that leaves each its ten characters', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(cell, cell, cell), { minLength: 1 }),
      fc.integer({ min: 34, max: 120 }),
      (rows, width) => {
        for (const line of table(rows, width).split('\n'))
          expect([...line].length).toBeLessThanOrEqual(width);
      },
    ),
  );
});

test('a word longer than its column is broken, not lost', () => {
  expect(wrap('ab abcdefghijklmnop z', 10)).toEqual(['ab', 'abcdefghij', 'klmnop z']);
});

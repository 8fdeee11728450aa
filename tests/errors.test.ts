import fc from 'fast-check';
import { expect, test } from 'vitest';
import { InputError, JoinError, TenonwrightError } from '../src/errors.js';
import { speaker } from '../src/length/index.js';
import { seed } from './properties/seed.js';

const error = new JoinError(
  'no-contact',
  (say) => `they are ${say.fine(0.05)} apart, ${say.length(57.5)} up, at ${say.angle(7.5)}`,
);

test('an error says its lengths in mm by itself and in the person’s units when asked', () => {
  expect(error.message).toBe('they are 0.05 mm apart, 57.5 mm up, at 7.5°');
  expect(error.explain(speaker('mm'))).toBe(error.message);
  // 0.05 / 25.4 = 0.0020 in; 57.5 / 25.4 = 2.2638 in, nearest 2 17/64 = 57.547
  expect(error.explain(speaker('in'))).toBe('they are 0.002" apart, 2-17/64" up, at 7.5°');
});

test('an error of plain words says them in any units', () => {
  const plain = new InputError('unknown', "there is no wood called 'cheese'");
  expect(plain.explain(speaker('in'))).toBe(plain.message);
});

test('every error of a person is one by its class, and keeps its own name and code', () => {
  expect(error).toBeInstanceOf(TenonwrightError);
  expect([error.name, error.code]).toEqual(['JoinError', 'no-contact']);
});

test('for all lengths and angles the message reads as the voice in mm says it', () => {
  const number = fc.double({ min: -5000, max: 5000, noNaN: true });
  fc.assert(
    fc.property(number, (value) => {
      const all = new TenonwrightError('any', (say) =>
        [say.length(value), say.fine(value), say.angle(value)].join(' '),
      );
      expect(all.message).toBe(all.explain(speaker('mm')));
    }),
    { ...seed(300), examples: [[0], [-0], [-0.0004], [-0.04], [100], [99.96], [0.0005], [1000]] },
  );
});

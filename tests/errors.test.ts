import fc from 'fast-check';
import { expect, test } from 'vitest';
import { standOff } from '../src/board/index.js';
import { InputError, JoinError, TenonwrightError } from '../src/errors.js';
import { speaker } from '../src/length/index.js';
import { fromDistances } from '../src/mounting/index.js';
import { circle, obround, polygon } from '../src/profile/index.js';
import { routerSpeedLimit } from '../src/tables/index.js';
import { seed } from './properties/seed.js';

const error = new JoinError(
  'no-contact',
  (say) => `they are ${say.fine(0.05)} apart, ${say.length(57.5)} up, at ${say.angle(7.5)}`,
);

test('an error says its lengths in mm by itself and in the person’s units when asked', () => {
  expect(error.message).toBe('they are 0.05 mm apart, 57.5 mm up, at 7.5°');
  expect(error.explain(speaker('mm'))).toBe(error.message);
  // 0.05 / 25.4 = 0.0020 in; 57.5 / 25.4 = 2.2638 in, nearest 2 1/4 = 57.150
  expect(error.explain(speaker('in'))).toBe('they are 0.002" apart, 2-1/4" up, at 7.5°');
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
        [
          say.length(value),
          say.fine(value),
          ...say.lengths(value, value + 0.04),
          ...say.fines(value, value + 0.0004),
          say.angle(value),
        ].join(' '),
      );
      expect(all.message).toBe(all.explain(speaker('mm')));
    }),
    { ...seed(300), examples: [[0], [-0], [-0.0004], [-0.04], [100], [99.96], [0.0005], [1000]] },
  );
});

test.each<[what: string, refused: () => unknown, inInches: string]>([
  // 25.4 mm to the inch by definition
  ['a bush', () => standOff({ cutter: 12.7, bush: 12.7 }), 'the guide bush is 1/2" and the cutter 1/2"'],
  ['a circle', () => circle({ diameter: -25.4 }), 'its diameter is -1"'],
  ['an obround', () => obround({ length: 6.35, width: 12.7 }), 'its length is 1/4" and its width 1/2"'],
  ['a router', () => routerSpeedLimit(127), 'a 5" cutter has no speed in the table'],
  [
    'a corner',
    () =>
      polygon([
        { x: 0, y: 0 },
        { x: 25.4, y: 0, radius: 50.8 },
        { x: 0, y: 25.4 },
      ]),
    'at (1", 0") has a radius of 2"',
  ],
  [
    'measured holes',
    () => fromDistances('1-2 1in; 1-3 1in; 2-3 3in', { mirror: 'as-seen-from-above' }),
    '1-2 1", 1-3 1" and 2-3 3" make no triangle',
  ],
])('%s that cannot be is told in inches to who works in inches', (_, refused, inInches) => {
  let told = 'nothing refused';
  try {
    refused();
  } catch (error) {
    told = (error as TenonwrightError).explain(speaker('in'));
  }
  expect(told).toContain(inInches);
  expect(told).not.toContain('mm');
});

import { expect, test } from 'vitest';
import { InputError } from '../../src/errors.js';
import { parseAngle, printAngle } from '../../src/length/index.js';

test.each([
  ['10', 10],
  ['10deg', 10],
  ['10 deg', 10],
  ['10°', 10],
  ['10 degrees', 10],
  ['7½°', 7.5],
  ['7 1/2', 7.5],
  ['-3.5°', -3.5],
  ['−3.5', -3.5],
])('the angle %s is %f degrees', (text, degrees) => {
  expect(parseAngle(text)).toBe(degrees);
});

test.each([
  ['', 'angle-empty'],
  ['steep', 'angle-not-a-number'],
  ['1/0', 'angle-divided-by-zero'],
  ['9'.repeat(400), 'angle-too-large'],
  ['10 rad', 'angle-text-after'],
  ['10 mm', 'angle-text-after'],
  ['10° 30', 'angle-text-after'],
])("the angle '%s' is refused with %s", (text, code) => {
  expect(() => parseAngle(text)).toThrow(expect.objectContaining({ code }));
  expect(() => parseAngle(text)).toThrow(InputError);
});

test('an angle is printed without needless zeros and never as minus nothing', () => {
  expect(printAngle(7.5)).toBe('7.5°');
  expect(printAngle(10)).toBe('10°');
  expect(printAngle(-0.001)).toBe('0°');
});

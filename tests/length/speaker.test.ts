import { expect, test } from 'vitest';
import { speaker } from '../../src/length/index.js';

test('figures are said in metric', () => {
  const say = speaker('mm');
  expect(say.length(57.5)).toBe('57.5 mm');
  expect(say.fine(0.05)).toBe('0.05 mm');
  expect(say.angle(10)).toBe('10°');
  expect(say.area(42.126)).toBe('42.13 mm²');
  expect(say.area(1250)).toBe('12.5 cm²');
  expect(say.volume(0.5)).toBe('0.50 mm³');
  expect(say.volume(1_234_567)).toBe('1234.6 cm³');
});

test('figures are said in inches, and stay metric when they are too small for them', () => {
  const say = speaker('in');
  expect(say.length(9.525)).toBe('3/8"');
  // 1 in² = 645.16 mm², 1 in³ = 16387.064 mm³
  expect(say.area(1290.32)).toBe('2.000 in²');
  expect(say.volume(16387.064)).toBe('1.000 in³');
  expect(say.volume(0.5)).toBe('0.50 mm³');
  expect(say.volume(0)).toBe('0.000 in³');
});

import { expect, test } from 'vitest';
import { didYouMean, nearest } from '../../src/model/index.js';

const KEYS = ['grain', 'face', 'edge', 'long', 'wide', 'thick', 'when'];

test.each([
  // two neighbours that changed places are one slip, not two
  ['wdie', 'wide'],
  ['thikc', 'thick'],
  ['gonl', 'long'],
  // both are one letter away: the first letter decides
  ['lace', 'face'],
  ['wade', 'wide'],
  ['Thick', 'thick'],
])('%s is taken for %s', (word, meant) => {
  expect(nearest(word, KEYS)).toBe(meant);
});

test('of two names one letter away the one with the same first letter is meant, whichever is known first', () => {
  for (const known of [
    ['rail', 'sail'],
    ['sail', 'rail'],
  ])
    expect(nearest('rial', known)).toBe('rail');
  expect(nearest('sain', ['rain', 'said'])).toBe('said');
});

test('nothing is meant where more than half of the letters differ', () => {
  expect(nearest('plinth', KEYS)).toBeUndefined();
  expect(nearest('', KEYS)).toBeUndefined();
  expect(nearest('x', [])).toBeUndefined();
  expect(didYouMean('plinth', ['wide', 'edge'])).toBe('; known are edge, wide');
});

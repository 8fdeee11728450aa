import { expect, test } from 'vitest';
import { numberOf, remembered } from '../src/remembered.js';

test('work is done once for what it depends on, and what was not asked for longest is forgotten', () => {
  const done: string[] = [];
  const known = remembered<{ readonly of: string }>(2);
  const ask = (key: string) =>
    known(key, () => {
      done.push(key);
      return { of: key };
    }).of;
  expect(['a', 'b', 'a', 'c', 'a', 'b'].map(ask)).toEqual(['a', 'b', 'a', 'c', 'a', 'b']);
  // c pushed b out, for a had just been asked for
  expect(done).toEqual(['a', 'b', 'c', 'b']);
});

test('a thing keeps its number, and another has another', () => {
  const [one, other] = [{}, {}];
  expect(numberOf(one)).toBe(numberOf(one));
  expect(numberOf(one)).not.toBe(numberOf(other));
});

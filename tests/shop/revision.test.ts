import { expect, test } from 'vitest';
import { builtInShop, fnv1a, revisionOf as revisionIn } from '../../src/shop/index.js';

test.each([
  // published test vectors of the hash, 32-bit FNV-1a
  ['', 0x811c9dc5],
  ['a', 0xe40c292c],
  ['foobar', 0xbf9cf968],
])('the hash of %j is the published one', (text, hash) => {
  expect(fnv1a(text)).toBe(hash);
});

const shop = builtInShop('mm');
const revisionOf = (parameters: Parameters<typeof revisionIn>[0], version: string) =>
  revisionIn(parameters, version, shop);

const mm = (value: number) => ({ value, unit: 'mm' as const });

test('the revision is the same for the same design in whatever order its parameters come', () => {
  expect(revisionOf({ a: mm(1), b: mm(2) }, '1')).toBe(revisionOf({ b: mm(2), a: mm(1) }, '1'));
  expect(revisionOf({}, '')).toMatch(/^[0-9a-f]{8}$/);
});

test('any parameter, its unit, and the version change the revision', () => {
  const one = revisionOf({ a: mm(1), b: mm(2) }, '1');
  for (const other of [
    revisionOf({ a: mm(1.000001), b: mm(2) }, '1'),
    revisionOf({ a: mm(2), b: mm(1) }, '1'),
    revisionOf({ a: { value: 1, unit: 'deg' }, b: mm(2) }, '1'),
    revisionOf({ a: { value: '1', unit: 'mm' }, b: mm(2) }, '1'),
    revisionOf({ a: mm(1) }, '1'),
    revisionOf({ a: mm(1), b: mm(2) }, '2'),
  ])
    expect(other).not.toBe(one);
});

test('another line in the file of a piece changes the revision', () => {
  const [one, other] = ['wide: 40\n', 'wide: 41\n'].map((told) => revisionIn({}, '1', shop, told));
  expect(new Set([one, other, revisionIn({}, '1', shop)]).size).toBe(3);
});

test('another router changes the revision, another name of the shop file does not', () => {
  const own = revisionIn({}, '1', shop);
  expect(revisionIn({}, '1', { ...shop, name: 'mine.yaml' })).toBe(own);
  expect(revisionIn({}, '1', { ...shop, router: { ...shop.router, plungeTravel: 61 } })).not.toBe(own);
});

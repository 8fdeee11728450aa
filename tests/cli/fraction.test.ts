// The finest fraction of an inch that wood is told in: chosen for a run or in the shop file, and of no use in millimetres.

import { expect, test } from 'vitest';
import { plainYaml } from '../../src/model/index.js';
import { builtInShop, readShop, shopExample } from '../../src/shop/index.js';
import { atDesk } from './desk.js';

const request = async (...words: readonly string[]) => {
  const { asked, err } = await atDesk(['make', 'small', ...words]);
  return { of: asked[0]?.[1], err };
};

test('a run in inches tells wood to 1/32, or as fine as it is asked to', async () => {
  expect((await request('--units', 'in')).of?.shop.units).toBe('in');
  expect((await request('--units', 'in', '--fraction', '1/64')).of?.shop.units).toBe('in/64');
  expect((await request('--units', 'in', '--fraction', '1/16')).of?.shop.units).toBe('in/16');
});

test('drawings in inches, or in both, take the fraction too', async () => {
  const both = await request('--drawing-units', 'dual', '--fraction', '1/16');
  expect([both.of?.shop.units, both.of?.drawingUnits]).toEqual(['mm', 'dual/16']);
  expect(
    (await request('--units', 'in', '--drawing-units', 'in', '--fraction', '1/64')).of?.drawingUnits,
  ).toBe('in/64');
});

test('a fraction nobody has on a rule, or one where nothing is in inches, is refused with what is allowed', async () => {
  expect((await request('--units', 'in', '--fraction', '1/10')).err).toMatch(
    /fraction is '1\/10'; it must be 1\/32, 1\/16 or 1\/64/,
  );
  expect((await request('--fraction', '1/16')).err).toMatch(
    /--fraction is 1\/16, and nothing is told in inches: add --units in, or leave it out/,
  );
});

test('a shop file says its fraction once and for all, and is written back with it', async () => {
  const shop = readShop({ router: { base: { along: 6 } }, fraction: '1/64' }, 'shop.yaml', 'in');
  expect([shop.units, shop.fraction]).toEqual(['in/64', '1/64']);
  const text = shopExample('in', { ...builtInShop('in'), fraction: '1/16' });
  expect(readShop(await plainYaml(text, 'shop.yaml', ''), 'shop.yaml', 'in').units).toBe('in/16');
});

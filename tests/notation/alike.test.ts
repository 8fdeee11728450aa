import { expect, test } from 'vitest';
import { builtInShop } from '../../src/shop/index.js';
import { verdictOf } from '../../src/verdict/index.js';
import { plainJig } from '../shop/designs.js';
import { pieceModel, shippedPiece } from './built-piece.js';

const question = { shop: builtInShop('mm'), jig: plainJig(), units: 'mm' } as const;

/** What a file's design is judged, without the names of boards: code, level and figure of every finding. */
async function judged(text: string): Promise<readonly string[]> {
  const { findings, refused } = await verdictOf({ ...question, model: pieceModel(text) }, {});
  expect(refused).toBeUndefined();
  return findings.map(({ code, level, measured }) => `${level} ${code} ${measured.toFixed(3)}`).toSorted();
}

const swap = (text: string, a: string, b: string): string =>
  text.replace(new RegExp(`\\b(${a}|${b})\\b`, 'g'), (word) => (word === a ? b : a));

/** Stands on one side only: a bracket shelf with its one bracket at the left. */
const LOPSIDED = shippedPiece('wall-shelf')
  .replace('    mirrored: left-right\n', '')
  .replace('left: 120 short of shelf', 'left: 150 short of shelf');

test('a piece told with left and right swapped is judged alike', async () => {
  const there = await judged(LOPSIDED);
  expect(there.length).toBeGreaterThan(0);
  // the face of the bracket looks the same way: it is a face, not a side it stands on
  expect(await judged(swap(LOPSIDED, 'left', 'right').replaceAll('right-left', 'left-right'))).toEqual(there);
}, 60_000);

test('a piece whose boards have other names is judged alike', async () => {
  const text = shippedPiece('ladder-shelf');
  const told = await judged(text);
  expect(told.length).toBeGreaterThan(0);
  expect(await judged(text.replace('  step:', '  rung:').replace('step to', 'rung to'))).toEqual(told);
}, 60_000);

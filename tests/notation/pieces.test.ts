import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { builtInShop } from '../../src/shop/index.js';
import { verdictOf } from '../../src/verdict/index.js';
import { plainJig } from '../shop/designs.js';
import { pieceModel, shippedPiece } from './built-piece.js';

const names = readdirSync(new URL('../../pieces/', import.meta.url)).map((file) =>
  file.replace(/\.yaml$/, ''),
);

test.each(names)(
  '%s is sound as it is told',
  async (name) => {
    const question = {
      model: pieceModel(shippedPiece(name)),
      shop: builtInShop('mm'),
      jig: plainJig(),
      units: 'mm',
    } as const;
    const { findings, refused } = await verdictOf(question, {});
    expect(refused).toBeUndefined();
    expect(findings.filter(({ level }) => level === 'error')).toEqual([]);
  },
  120_000,
);

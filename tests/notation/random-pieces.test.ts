import fc from 'fast-check';
import { expect, test } from 'vitest';
import { InputError } from '../../src/errors.js';
import { builtInShop } from '../../src/shop/index.js';
import { verdictOf } from '../../src/verdict/index.js';
import { many, seed } from '../properties/seed.js';
import { plainJig } from '../shop/designs.js';
import { builtPiece, pieceModel } from './built-piece.js';
import { randomPiece } from './random-piece.js';

test('a piece told at random is built and judged, or refused by line: it is never a fault', async () => {
  const built: string[] = [];
  const refused: string[] = [];
  fc.assert(
    fc.property(randomPiece, (text) => {
      try {
        builtPiece(text);
        built.push(text);
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        expect(error.message).toMatch(/^piece\.yaml, line \d+, column \d+: /);
        refused.push(error.message);
      }
    }),
    seed(many(150, 1500)),
  );
  expect(Math.min(built.length, refused.length)).toBeGreaterThan(8);
  const question = { shop: builtInShop('mm'), jig: plainJig(), units: 'mm' } as const;
  const joined = built.filter((text) => builtPiece(text).joints.length > 0);
  const judged = [...joined, ...built].slice(0, many(4, 24));
  for (const text of judged) {
    const verdict = await verdictOf({ ...question, model: pieceModel(text) }, {});
    expect(verdict.refused?.message ?? verdict.findings, text).toBeDefined();
  }
}, 240_000);

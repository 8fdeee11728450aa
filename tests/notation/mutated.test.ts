import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { InputError } from '../../src/errors.js';
import { readParameters } from '../../src/model/index.js';
import { newPiece, pieceFrom } from '../../src/notation/index.js';
import { many, seed } from '../properties/seed.js';
import { shippedPiece } from './built-piece.js';

const FILES = [
  ...readdirSync(new URL('../../pieces/', import.meta.url)).map((file) =>
    shippedPiece(file.replace('.yaml', '')),
  ),
  newPiece('shelf', 'x'),
];

/** Words, figures and signs of every file: what a slip may put in another's place. */
const WORDS = [...new Set(FILES.flatMap((text) => text.match(/[\w°½]+|[^\w\s]/gu)!))];

const SIGNS = [
  ...'{}[]:,;#&*!|>\'"%@`-+()\t\n \u0000\ud800é×°=/\\',
  ': ',
  ' #',
  '\r',
  '\n  ',
  '<<: ',
  '---\n',
  '0',
  '1e9',
  '-1',
];

/** One slip of a hand, at a place that is a share of the file. */
type Slip = (text: string, at: number) => string;

const slips: fc.Arbitrary<Slip> = fc.oneof(
  fc.nat(30).map(
    (count): Slip =>
      (text, at) =>
        text.slice(0, at) + text.slice(at + 1 + count),
  ),
  fc.constantFrom(...SIGNS).map(
    (sign): Slip =>
      (text, at) =>
        text.slice(0, at) + sign + text.slice(at),
  ),
  fc.constantFrom(...WORDS).map(
    (word): Slip =>
      (text, at) => {
        const start = Math.max(text.slice(0, at).search(/[\w°]*$/), 0);
        return text.slice(0, start) + text.slice(start).replace(/^[\w°]+|^./u, word);
      },
  ),
  fc.nat(200).map(
    (count): Slip =>
      (text, at) =>
        text.slice(0, at) + text.slice(Math.max(0, at - count)),
  ),
  fc.constant<Slip>((text, at) => text.slice(0, at) + text[at + 1] + text[at] + text.slice(at + 2)),
);

test('a piece whose file was written with slips is read and built, or refused by line; it never hangs and is never a fault', () => {
  const tally = { built: 0, refused: 0 };
  fc.assert(
    fc.property(
      fc.constantFrom(...FILES),
      fc.array(fc.tuple(slips, fc.double({ min: 0, max: 1, noNaN: true })), { minLength: 1, maxLength: 3 }),
      (text, made) => {
        const slipped = made.reduce((now, [slip, share]) => slip(now, Math.floor(share * now.length)), text);
        const before = performance.now();
        try {
          const piece = pieceFrom(slipped, 'piece.yaml');
          piece.build(readParameters(piece, {}, 'mm'));
          tally.built += 1;
        } catch (error) {
          expect(error).toBeInstanceOf(InputError);
          expect((error as Error).message).toMatch(/^piece\.yaml, line \d+, column \d+: /);
          tally.refused += 1;
        }
        expect(performance.now() - before).toBeLessThan(20_000);
      },
    ),
    seed(many(200, 600)),
  );
  expect(Math.min(tally.built, tally.refused)).toBeGreaterThan(9);
});

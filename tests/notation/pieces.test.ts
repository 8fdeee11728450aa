import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { TenonwrightError } from '../../src/errors.js';
import type { Joint } from '../../src/joinery/index.js';
import { type ParameterMeta, parameterMeta } from '../../src/model/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { verdictOf } from '../../src/verdict/index.js';
import { many, seed } from '../properties/seed.js';
import { plainJig } from '../shop/designs.js';
import { pieceModel, shippedPiece } from './built-piece.js';

const names = readdirSync(new URL('../../pieces/', import.meta.url)).map((file) =>
  file.replace(/\.yaml$/, ''),
);

/** A value of a dimension anywhere in its range, to half a millimetre or half a degree. */
const drawnFrom = ({ kind, min, max, choices }: ParameterMeta): fc.Arbitrary<unknown> =>
  choices
    ? fc.constantFrom(...choices)
    : kind === 'flag'
      ? fc.boolean()
      : kind === 'count'
        ? fc.integer({ min: min!, max: max! })
        : fc.integer({ min: Math.ceil(min! * 2), max: Math.floor(max! * 2) }).map((half) => half / 2);

/** What a line of `must` says of values that do not go together. */
const MUST = /, and must be (less than|at most|more than|at least|exactly) /;

/** `node tests/ranges/pieces.mjs` tries many more settings. */
test.each(names)(
  '%s is sound as it is told, and anywhere in its ranges',
  async (name) => {
    const model = pieceModel(shippedPiece(name));
    const question = { model, shop: builtInShop('mm'), jig: plainJig(), units: 'mm' } as const;
    const ranges = fc.record(
      Object.fromEntries(
        Object.entries(model.parameters.shape).map(([key, schema]) => [
          key,
          drawnFrom(parameterMeta(key, schema)),
        ]),
      ),
    );
    const settings = [{}, ...fc.sample(ranges, seed(2))].slice(0, many(1, 2));
    for (const values of settings) {
      const { findings, refused } = await verdictOf(question, values);
      if (refused && MUST.test(refused.message)) continue;
      const said = JSON.stringify(values);
      expect(refused?.message, said).toBeUndefined();
      expect(
        findings.filter(({ level }) => level === 'error'),
        said,
      ).toEqual([]);
    }
  },
  240_000,
);

test('corners that mirror each other get the same mortises, at any size', () => {
  const model = pieceModel(shippedPiece('mirror-frame'));
  const sizes = fc.record(
    Object.fromEntries(
      Object.entries(model.parameters.shape).map(([key, schema]) => [
        key,
        drawnFrom(parameterMeta(key, schema)),
      ]),
    ),
  );
  for (const values of [{}, ...fc.sample(sizes, seed(many(10, 60)))]) {
    let joints: readonly Joint[];
    try {
      ({ joints } = model.build(values as never));
    } catch (error) {
      if (error instanceof TenonwrightError && MUST.test(error.message)) continue;
      throw error;
    }
    const [first, ...others] = joints.map(({ tenons }) =>
      tenons.map(({ width, length, intoA, intoB }) => [width, length, intoA, intoB]),
    );
    for (const other of others) expect(other, JSON.stringify(values)).toEqual(first);
  }
});

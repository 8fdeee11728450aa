import { readFileSync } from 'node:fs';
import type { Design } from '../../src/assembly/index.js';
import { type Model, parameterMeta } from '../../src/model/index.js';
import { pieceFrom } from '../../src/notation/index.js';
import { builtInShop, toolsOf } from '../../src/shop/index.js';

/** A piece of a file as a model that takes what it was given and its usual values for the rest, with the tools of the usual shop. */
export function pieceModel(text: string): Model {
  const piece = pieceFrom(text, 'piece.yaml');
  const usual = Object.fromEntries(
    Object.entries(piece.parameters.shape).map(([name, schema]) => [
      name,
      parameterMeta(name, schema).default,
    ]),
  );
  return {
    ...piece,
    complete: (values) => piece.complete({ ...usual, ...values }),
    build: (values, tools = toolsOf(builtInShop('mm'))) => piece.build({ ...usual, ...values }, tools),
  };
}

/** The design of a file with its usual values, or the values given by parameter name. */
export const builtPiece = (text: string, values: Readonly<Record<string, unknown>> = {}): Design =>
  pieceModel(text).build(values as never);

export const shippedPiece = (name: string): string =>
  readFileSync(new URL(`../../pieces/${name}.yaml`, import.meta.url), 'utf8');

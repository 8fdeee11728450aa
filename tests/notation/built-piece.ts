import { readFileSync } from 'node:fs';
import type { Design } from '../../src/assembly/index.js';
import { type Model, parameterMeta } from '../../src/model/index.js';
import {
  type Dimension,
  designOf,
  dimensionOf,
  holdMusts,
  knownFrom,
  type PieceTree,
  Problems,
  readPiece,
  reckoning,
} from '../../src/notation/index.js';
import { builtInShop, toolsOf } from '../../src/shop/index.js';

/** A piece's file taken apart: what it tells, its dimensions, and the design they make. */
export interface Told {
  readonly tree: PieceTree;
  readonly dimensions: readonly Dimension[];
  readonly build: (values?: Readonly<Record<string, unknown>>) => Design;
}

/** @param text of the file */
export function toldPiece(text: string): Told {
  const problems = new Problems('piece.yaml', text);
  const tree = readPiece(text, problems);
  problems.end();
  const dimensions = tree!.dimensions.map((line) => dimensionOf(line, tree!.units));
  const build = (values: Readonly<Record<string, unknown>> = {}): Design => {
    const found = new Problems('piece.yaml', text);
    const usual = Object.fromEntries(
      dimensions.flatMap(({ parameter, schema }) => {
        const start = schema && parameterMeta(parameter, schema).default;
        return start === undefined ? [] : [[parameter, start]];
      }),
    );
    const { scope, words } = knownFrom(tree!, dimensions, { ...usual, ...values }, found);
    holdMusts(tree!, scope, found);
    found.end();
    return designOf(
      tree!,
      {
        reckon: reckoning(scope, tree!.units),
        wood: ({ value }) => words.get(value) ?? value,
        tools: toolsOf(builtInShop('mm')),
      },
      found,
    );
  };
  return { tree: tree!, dimensions, build };
}

/** The design of a file with its usual values, or the values given by parameter name. */
export const builtPiece = (text: string, values: Readonly<Record<string, unknown>> = {}): Design =>
  toldPiece(text).build(values);

export const shippedPiece = (name: string): string =>
  readFileSync(new URL(`../../pieces/${name}.yaml`, import.meta.url), 'utf8');

/** A piece as the verdict takes it. */
export const pieceModel = (text: string): Model => {
  const { tree, build } = toldPiece(text);
  return {
    name: tree.design.value,
    title: tree.title.value,
    summary: '',
    parameters: { shape: {} } as unknown as Model['parameters'],
    complete: (values) => values,
    build,
  };
};

import { readdirSync, readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import {
  BOARD_KEYS,
  HELD_KEYS,
  JOINT_KEYS,
  newPiece,
  pieceSchemaJson,
  SCHEMA_KEYS,
  USER_KEYS,
} from '../../src/notation/index.js';
import { shippedPiece } from './built-piece.js';

const shipped = readdirSync(new URL('../../pieces/', import.meta.url)).map((file) =>
  file.replace('.yaml', ''),
);

test('docs/piece.schema.json is what the schema gives: node scripts/pieces.mjs writes it', () => {
  expect(readFileSync(new URL('../../docs/piece.schema.json', import.meta.url), 'utf8')).toBe(
    pieceSchemaJson(),
  );
});

test('editors know the keys the reader knows, and no others', () => {
  expect(SCHEMA_KEYS.board.toSorted()).toEqual(BOARD_KEYS.toSorted());
  expect([...SCHEMA_KEYS.joint, 'depth in …'].toSorted()).toEqual(JOINT_KEYS.toSorted());
  expect(SCHEMA_KEYS.held.toSorted()).toEqual(HELD_KEYS.toSorted());
  expect(SCHEMA_KEYS.user.toSorted()).toEqual(USER_KEYS.toSorted());
});

/** What an outside reader of JSON Schema says of a file: where something is wrong, and which rule says so. */
const fits = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(JSON.parse(pieceSchemaJson()));
const wrongIn = (text: string): readonly string[] =>
  fits(parse(text)) ? [] : fits.errors!.map(({ instancePath, keyword }) => `${instancePath} ${keyword}`);

test.each([...shipped, 'new'])('%s fits the schema, and a slip in a key does not', (name) => {
  const text = name === 'new' ? newPiece('garden-shelf', 'x') : shippedPiece(name);
  expect(wrongIn(text)).toEqual([]);
  expect(wrongIn(text.replace('grain:', 'grian:'))).toEqual([
    expect.stringMatching(/^\/boards\/[^/]+ required$/),
    expect.stringMatching(/^\/boards\/[^/]+ additionalProperties$/),
  ]);
});

test.each([
  ['a piece without boards', /boards:[\s\S]*/, '', ' required'],
  ['a box of two sizes', 'piece: [width, depth, height]', 'piece: [width, depth]', '/piece minItems'],
  ['a name no folder can have', 'design: side-table', 'design: Side Table', '/design pattern'],
  ['a grain that runs nowhere', 'grain: up', 'grain: sideways', '/boards/leg/grain enum'],
  ['a use nobody knows', 'use: table top', 'use: ladder', '/boards/table top/use enum'],
  ['a list where one size is due', 'thick: leg', 'thick: [leg, leg]', '/boards/leg/thick type'],
  ['a taper without its end', /to: foot, at/, 'at', '/boards/leg/taper anyOf'],
  ['a way to hold that is none', 'by: buttons', 'by: nails', '/held/table top to apron/by enum'],
  ['an option no joint has', '{ tenons: 1 }', '{ tenon: 1 }', '/joints/apron to leg additionalProperties'],
] as const)('%s is marked in its place', (_, from, to, where) => {
  const text = shippedPiece('side-table');
  const broken = text.replace(from, to);
  expect(broken).not.toBe(text);
  expect(wrongIn(broken)).toContain(where);
});

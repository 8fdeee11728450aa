import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import {
  BOARD_KEYS,
  HELD_KEYS,
  JOINT_KEYS,
  newPiece,
  PIECE_SCHEMA,
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

/** Without what the pattern of joints lets through besides. */
const withoutDepths = (text: string): string => text.replace(/,? ?depth in [a-z ]+: [^,}\n]+/g, '');

test.each([...shipped, 'new'])('%s fits the schema, and a slip in a key does not', (name) => {
  const text = name === 'new' ? newPiece('garden-shelf', 'x') : shippedPiece(name);
  const found = PIECE_SCHEMA.safeParse(parse(withoutDepths(text)));
  expect(found.error?.issues ?? []).toEqual([]);
  const slipped = parse(withoutDepths(text).replace('grain:', 'grian:'));
  expect(PIECE_SCHEMA.safeParse(slipped).success).toBe(false);
});

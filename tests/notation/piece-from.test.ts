import { expect, test } from 'vitest';
import { readParameters } from '../../src/model/index.js';
import { newPiece, pieceFrom } from '../../src/notation/index.js';
import { aboutOf } from '../../src/range/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { plainJig } from '../shop/designs.js';

const SHELF = newPiece('garden-shelf', 'x');

test('verdicts that were kept are not those of a file that says something else since, though its boards are the same', () => {
  const about = (text: string) => {
    const model = pieceFrom(text, 'garden-shelf.yaml');
    const question = { model, shop: builtInShop('mm'), jig: plainJig(), units: 'mm' } as const;
    return aboutOf(question, readParameters(model, {}, 'mm'), '1');
  };
  expect(about(SHELF)).toBe(about(SHELF));
  expect(about(SHELF.replace('>= 120:', '>= 150:'))).not.toBe(about(SHELF));
});

test('a size that is worked out follows the others until it is given, in completed values as in the boards', () => {
  const piece = pieceFrom(SHELF.replace('depth: 250 from', 'depth: width / 2 from'), 'shelf.yaml');
  const depth = (given: Readonly<Record<string, unknown>>) => {
    const values = readParameters(piece, given, 'mm');
    const built = piece.build(values).boards.find(({ board }) => board.id === 'left-side')!;
    return [(piece.complete(values) as { depth: number }).depth, built.board.blank.width];
  };
  expect(depth({})).toEqual([250, 250]);
  expect(depth({ width: 600 })).toEqual([300, 300]);
  expect(depth({ width: 900 })).toEqual([350, 350]);
  expect(depth({ width: 600, depth: 210 })).toEqual([210, 210]);
});

test('what the file works out is told with the design, with its formula', () => {
  const told = SHELF.replace('must:', 'worked out:\n  pitch: (height - board) / (shelves + 1)\nmust:');
  const piece = pieceFrom(told, 'shelf.yaml');
  expect(piece.build(readParameters(piece, { board: 20 }, 'mm')).derived).toContainEqual({
    name: 'pitch',
    value: 260,
    unit: 'mm',
    help: '(height - board) / (shelves + 1)',
  });
});

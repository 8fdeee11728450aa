import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BOARD_KEYS, HELD_KEYS, JOINT_KEYS } from '../../src/notation/index.js';
import { builtInShop } from '../../src/shop/index.js';
import { verdictOf } from '../../src/verdict/index.js';
import { many, seed } from '../properties/seed.js';
import { plainJig } from '../shop/designs.js';
import { builtPiece, pieceModel, shippedPiece } from './built-piece.js';

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
});

const shipped = readdirSync(new URL('../../pieces/', import.meta.url)).map((file) =>
  shippedPiece(file.replace('.yaml', '')),
);

/** Words the notation knows: a board called so cannot be renamed word by word. */
const KNOWN = new Set(
  [
    ...BOARD_KEYS,
    ...JOINT_KEYS,
    ...HELD_KEYS,
    'step seat table shelf none high feet side floor piece and to of starts sides',
  ]
    .join(' ')
    .split(' '),
);

/** The same piece, all its boards (and the dimensions called like them) with names that sort the other way round. */
function renamed(text: string): string {
  const names = [...text.slice(text.indexOf('\nboards:')).matchAll(/^ {2}([a-z][a-z ]*):/gm)].flatMap(
    ([, name]) => name!.split(' '),
  );
  const words = [...new Set(names)]
    .filter((word) => !KNOWN.has(word))
    .toSorted()
    .toReversed();
  return words.reduce(
    (told, word, i) =>
      told.replace(new RegExp(`(?<!;[^\\n]*)\\b${word}\\b`, 'g'), `${'abcdefghijklm'[i]}${word}x`),
    text,
  );
}

/** Every board's blank and how many mortises, holes and bevels it has, whatever it is called. */
const blanks = (text: string): readonly string[] =>
  builtPiece(text)
    .boards.map(({ board: { blank, mortises, holes, bevels } }) =>
      [blank.length, blank.width, blank.thickness, mortises.length, holes.length, bevels.length]
        .map((size) => size.toFixed(4))
        .join(' '),
    )
    .toSorted();

/** The blanks of the shipped pieces, built once for all ways. */
const built = new Map<string, readonly string[]>();

function asShipped(text: string): readonly string[] {
  const found = built.get(text) ?? blanks(text);
  built.set(text, found);
  return found;
}

const WAYS: readonly (readonly [string, (text: string) => string])[] = [
  ['renamed', renamed],
  [
    'with left and right swapped',
    (text) => swap(text, 'left', 'right').replaceAll('right-left', 'left-right'),
  ],
  [
    'with front and back swapped',
    (text) => swap(text, 'front', 'back').replaceAll('back-front', 'front-back'),
  ],
];

test.each(WAYS)(
  'every shipped piece %s has the same boards, and is judged alike',
  async (way, changed) => {
    // each piece in one of the ways for somebody who has just cloned
    const one = WAYS.findIndex(([name]) => name === way);
    const these = shipped.filter((_, i) => i % many(WAYS.length, 1) === one % many(WAYS.length, 1));
    expect(these.length).toBeGreaterThan(3);
    for (const text of these) expect(blanks(changed(text))).toEqual(asShipped(text));
    for (const text of fc.sample(fc.constantFrom(...shipped), seed(many(1, 2))))
      expect(await judged(changed(text))).toEqual(await judged(text));
  },
  240_000,
);

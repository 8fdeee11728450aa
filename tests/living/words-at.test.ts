import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Schema, wordsAt } from '../../src/living/words-at.js';

const SCHEMA = JSON.parse(
  readFileSync(new URL('../../docs/piece.schema.json', import.meta.url), 'utf8'),
) as Schema;

/** Words at the mark | of a text. */
const words = (text: string) => {
  const at = text.indexOf('|');
  return wordsAt(text.replace('|', ''), at, SCHEMA);
};
const said = (text: string) => words(text).map(({ word }) => word);

const SHELF = `design: pot-shelf
wood: white ash
dimensions:
  width: 500 from 400 to 900; Outside
  board: 22 from 18 to 30; Thickness
worked out:
  half: width / 2
boards:
  side:
    grain: up
    face: right
  top board: { grain: left-right, face: up }
`;

test('at the margin stand the parts of a piece that are not yet there', () => {
  expect(said(`${SHELF}|`)).toEqual([
    'title',
    'about',
    'notes',
    'units',
    'piece',
    'must',
    'joints',
    'held',
    'used by',
  ]);
  expect(said(`${SHELF}jo|`)).toEqual(['joints']);
  expect(said(`|\n${SHELF}`)).not.toContain('boards');
});

test('in a board stand its keys with what they are, and what is taken stands in place of what was typed', () => {
  const [first] = words(`${SHELF}  shelf:\n    gr|`);
  expect(first).toMatchObject({
    word: 'grain',
    help: 'the way its grain runs',
    written: 'grain: ',
    typed: 2,
    fixed: true,
  });
  expect(words(`${SHELF}  shelf:\n    gr|: up`)[0]).toMatchObject({ written: 'grain' });
  expect(said(`${SHELF}  shelf:\n    grain: up\n    gr|`)).toEqual(['grooved', 'groove']);
  // after an empty line and a comment too
  expect(said(`${SHELF}  shelf: # the lower one\n\n    # how it lies\n    gra|`)).toEqual(['grain']);
});

describe.each([
  ['shelf: { grain: up, fa|', ['face']],
  ['shelf: { grain: |', ['left-right', 'front-back', 'up']],
  ['shelf: { grain: up, use: s|', ['step', 'seat', 'shelf']],
  ['shelf: { arch: { |', ['side', 'high', 'feet', 'radius']],
  ['shelf: { arch: [{ side: top, high: 20 }, { s|', ['side']],
  ['shelf:\n    { grain: up,\n      fac|', ['face']],
  ['shelf:\n    holes:\n      - side: left\n      - si|', ['side']],
  ['shelf:\n    holes:\n      - side: left\n        si|', []],
])('in brackets and lists: %s', (text, expected) => {
  test(`${expected.length > 0 ? expected.join(', ') : 'nothing'}`, () => {
    expect(said(`${SHELF}  ${text}`)).toEqual(expected);
  });
});

test('boards and dimensions of the piece stand where a place or a formula does', () => {
  expect(said(`${SHELF}  shelf: { between: si|`)).toEqual(['side']);
  // the dimension could follow as well
  expect(said(`${SHELF}  shelf: { bottom: 60 above top b|`)).toEqual(['top board', 'board']);
  expect(words(`${SHELF}  shelf: { bottom: 60 above top b|`)[0]).toMatchObject({
    written: 'top board',
    typed: 5,
  });
  expect(said(`${SHELF}  shelf: { thick: (bo|`)).toEqual(['board']);
  expect(said(`${SHELF}joints:\n  top board to si|`)).toEqual(['side']);
  expect(said(`${SHELF}must:\n  - wi|`)).toEqual(['width']);
  expect(said(`${SHELF}piece: [w|`)).toEqual(['width']);
  expect(said(SHELF.replace('width / 2', 'wi|'))).toEqual(['width']);
});

test('where nothing of the language can stand there are no words', () => {
  // askew of the lines beside it: three blanks beside four
  expect(said(`${SHELF.replace('  top board: { grain: left-right, face: up }\n', '')}   gr|`)).toEqual([]);
  expect(said('boards:\n    side:\n      grain: up\n  |')).toEqual([]);
  // deeper than a plain value
  expect(said('title: Shelf\n    gr|')).toEqual([]);
  expect(said('title: Shelf # gr|')).toEqual([]);
  expect(said(`${SHELF}  # gr|`)).toEqual([]);
  expect(said(`${SHELF}  shelf: { grain: up } gr|`)).toEqual([]);
  expect(said(`${SHELF}  shelf: { constructor: { |`)).toEqual([]);
  expect(said('boards: |')).toEqual([]);
});

test('a word is found at every place of the pieces that come with the program, and no place is too much', () => {
  for (const name of ['tray', 'bedside-cabinet', 'panelled-door']) {
    const text = readFileSync(new URL(`../../pieces/${name}.yaml`, import.meta.url), 'utf8');
    for (let at = 0; at < text.length; at += 7) wordsAt(text, at, SCHEMA);
    // cut off behind its colon, each key of a board is what is offered in its place
    for (const { index } of [...text.matchAll(/\b(?<=[{,] )(grain|face|thick)(?=: )/g)].slice(0, 8))
      expect(said(`${text.slice(0, index + 2)}|`), text.slice(index - 20, index + 5)).toContain(
        /^[a-z]+/.exec(text.slice(index))![0],
      );
  }
});

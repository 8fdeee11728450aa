// One letter for one kind of mark: who reads T1 never has to ask whether a tenon or a board is meant.

import { expect, test } from 'vitest';
import { markdown } from '../../src/files/index.js';
import { readParameters } from '../../src/model/index.js';
import { loadPiece, OWN_PIECES, pieceFiles } from '../../src/node/index.js';
import {
  boardMarks,
  MARK_LETTERS,
  orderOfWork,
  orderPaper,
  setupPaper,
  storySticks,
} from '../../src/shop/index.js';
import { carded, made } from './made.js';

const letters = Object.values(MARK_LETTERS);

test('no two kinds of mark share a letter, and none takes the R of radii', () => {
  expect(new Set(letters).size).toBe(letters.length);
  expect(letters).not.toContain('R');
  for (const letter of letters) expect(letter).toMatch(/^[A-Z]$/);
});

/** Letters first, two or more; a number only after a hyphen: never a letter and its number. */
const OF_A_BOARD = /^[A-Z]{2,}(-[\w.-]+)?$/;

test('the marks of all boards of every shipped design and piece look like no other mark', async () => {
  const pieces = await Promise.all(
    (await pieceFiles(OWN_PIECES)).map((file) => loadPiece(OWN_PIECES, file, [])),
  );
  expect(pieces.length).toBeGreaterThan(10);
  const designs = [
    ...(['stool', 'frame', 'jig'] as const).map((name) => made(name)),
    made('stool', { treads: '2' }),
    ...pieces.map((piece) => piece.build(readParameters(piece, {}, 'mm'))),
  ];
  for (const { title, boards } of designs) {
    const marks = [...boardMarks(boards.map(({ board }) => board.id)).values()];
    expect(new Set(marks).size, title).toBe(boards.length);
    for (const mark of marks) expect(mark, title).toMatch(OF_A_BOARD);
  }
});

test('every letter with a number on a paper is of one kind of mark, a thread or a paper', () => {
  for (const [name, given] of [
    ['stool', {}],
    ['stool', { treads: '2' }],
    ['frame', {}],
    ['jig', {}],
  ] as const) {
    const work = carded(made(name, given));
    const { design, cards, holdings, shop } = work;
    const sticks = storySticks(design, cards);
    const revision = '';
    const text = [
      setupPaper({ ...work, sticks, revision }),
      orderPaper({ design, order: orderOfWork(design, holdings, cards), shop, revision }),
    ]
      .map(markdown)
      .join('\n');
    const found = [...text.matchAll(/(?<![\w-])([A-Z])(\d+)(?![\w])/g)].map(([whole, letter]) => ({
      whole,
      letter,
    }));
    if (name !== 'jig') expect(found.length, name).toBeGreaterThan(5);
    const strange = found.filter(
      ({ whole, letter }) => !(letters as readonly string[]).includes(letter!) && !/^(M\d+|A4)$/.test(whole),
    );
    expect(strange, name).toEqual([]);
  }
});

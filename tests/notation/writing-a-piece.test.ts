import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
// @ts-expect-error a script without types
import { examplesOf, picturesOf } from '../../scripts/piece-pictures.mjs';
import { isometricView } from '../../src/drawing/index.js';
import { viewSvg } from '../../src/files/index.js';
import { BOARD_KEYS, HELD_KEYS, JOINT_KEYS, pieceFrom, USER_KEYS } from '../../src/notation/index.js';
import { solidsOf, startKernel } from '../../src/solid/index.js';

const docs = new URL('../../docs/', import.meta.url);
const page = readFileSync(new URL('writing-a-piece.md', docs), 'utf8');

test('every picture of docs/writing-a-piece.md is what the program draws from the lines above it: node scripts/pieces.mjs', async () => {
  const drawn: ReadonlyMap<string, string> = await picturesOf(page, {
    pieceFrom,
    startKernel,
    solidsOf,
    isometricView,
    viewSvg,
  });
  expect([...drawn.keys()].toSorted()).toEqual(readdirSync(new URL('pictures/', docs)).toSorted());
  for (const [file, svg] of drawn)
    expect([file, readFileSync(new URL(`pictures/${file}`, docs), 'utf8') === svg]).toEqual([file, true]);
});

test('every example of the page has its picture, and the page tells every key of boards, joints and what is held', () => {
  expect(page.match(/```yaml/g)!.length).toBe(examplesOf(page).length);
  const told = [...page.matchAll(/```.*?```|`[^`]+`/gs)].join(' ');
  const untold = [...BOARD_KEYS, ...JOINT_KEYS, ...HELD_KEYS, ...USER_KEYS].filter(
    (key) => !new RegExp(`(?<![a-z])${key.replace(' …', '')}(?![a-z])`).test(told),
  );
  expect(untold).toEqual([]);
});

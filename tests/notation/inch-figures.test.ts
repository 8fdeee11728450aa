import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { INCH, speaker } from '../../src/length/index.js';
import { describeParameters, parameterMeta, readParameters } from '../../src/model/index.js';
import { newPiece, pieceFrom } from '../../src/notation/index.js';
import { builtInShop, toolsOf } from '../../src/shop/index.js';
import { quickVerdictOf, type Verdict, verdictOf } from '../../src/verdict/index.js';
import { many } from '../properties/seed.js';
import { plainJig } from '../shop/designs.js';
import { shippedPiece } from './built-piece.js';

const SHELF = newPiece('garden-shelf', 'x');
const WIDTH = 'width: 500 from 400 to 900; Outside, left to right';

/** The shelf with another line for its width. */
const shelf = (line: string) => pieceFrom(SHELF.replace(WIDTH, line), 'shelf.yaml');

test('the figure behind or is what a dimension begins at in inches, and not in mm, and not when it is given', () => {
  const piece = shelf('width: 500 or 20 in from 400 to 900; Outside');
  const width = (units: 'mm' | 'in', given = {}) => readParameters(piece, given, units).width;
  expect([width('mm'), width('in'), width('in', { width: '21' })]).toEqual([500, 508, 21 * INCH]);
  const told = (units: 'mm' | 'in') => describeParameters(piece, units)[0];
  expect(told('in')).toMatchObject({ option: 'width', default: '20"', help: 'Outside' });
  expect(told('mm')).toMatchObject({ option: 'width', default: '500 mm' });
});

test('a piece that is said back says what each dimension begins at, in the units of who asks', () => {
  const piece = shelf('width: 500 or 20 in from 400 to 900; Outside');
  const first = (units: 'mm' | 'in') =>
    piece.saidBack(readParameters(piece, {}, units), toolsOf(builtInShop(units)), speaker(units)).figures[0];
  expect(first('in')).toEqual({ told: 'width: 500 or 20 in from 400 to 900', comesTo: '20"' });
  expect(first('mm')).toEqual({ told: 'width: 500 or 20 in from 400 to 900', comesTo: '500 mm' });
});

test('every 64th of an inch may stand at the end of its own range', () => {
  // every third for somebody who has just cloned: in 192 of them all 64 parts of an inch come up once
  const step = many(3, 1);
  const ends = Array.from({ length: Math.floor(320 / step) }, (_, i) => `${step * i + 1}/64`);
  for (const end of ends)
    for (const range of [`from 0.1 to ${end} in`, `from ${end} in to 900`]) {
      const piece = pieceFrom(
        SHELF.replace(
          'rail: 70 from 50 to 100',
          `wide: ${end} in or ${end} in ${range}\n  rail: 70 from 50 to 100`,
        ),
        'shelf.yaml',
      );
      expect(parameterMeta('wide', piece.parameters.shape.wide!).inches).toBeCloseTo(
        Number(end.split('/')[0]) / Number(end.split('/')[1]),
        9,
      );
    }
});

/** A line for the width, what is wrong with it, and the words that are marked. */
const REFUSED: readonly (readonly [line: string, words: RegExp, marked: string])[] = [
  ['500 or 20 from 400 to 900', /'20' is no length in inches: write it like '32 in'/, '20'],
  ['500 or 508 mm from 400 to 900', /'508 mm' is no length in inches: write/, '508 mm'],
  ['500 or wide in from 400 to 900', /'wide in' is no length in inches/, 'wide in'],
  ['500 or 20 30 in from 400 to 900', /: write it like '32 in'/, '20 30 in'],
  ['500 or from 400 to 900', /nothing stands behind 'or': write it like/, ''],
  [
    '500 or 36 in from 400 to 900',
    /36 in is 914\.4 mm, and not from 400 to 900: take a figure within/,
    '36 in',
  ],
  ['500 or 15 in from 400 to 900', /15 in is 381 mm, and not from 400 to 900/, '15 in'],
  ['how many 3 or 4 in from 1 to 6', /'how many' counts things.*: leave 'or 4 in' out/, '4 in'],
  ['8° or 1 in from 4° to 10°', /an angle is the same for everyone.*: leave 'or 1 in' out/, '1 in'],
  ['yes or 1 in', /'yes' or 'no' is no length.*: leave 'or 1 in' out/, '1 in'],
  ['as built 500 or 20 in', /a size that is there stays.*: leave 'or 20 in' out/, '20 in'],
  [
    'one of white oak or white ash or 20 in',
    /'one of' names what to choose.*: leave 'or 20 in' out/,
    '20 in',
  ],
  [
    'piece width × 2 or 20 in from 400 to 900',
    /what follows from others is worked out.*: leave 'or/,
    '20 in',
  ],
];

test.each(REFUSED)('a dimension told as %s is refused at its line and column', (line, words, marked) => {
  const lines = SHELF.split('\n');
  const at = lines.indexOf(`  ${WIDTH}`) + 1;
  const column = `  width: ${line}`.lastIndexOf(marked === '' ? ' from' : marked) + 1;
  let told = '';
  try {
    shelf(`width: ${line}`);
  } catch (error) {
    told = (error as Error).message;
  }
  expect(told).toMatch(words);
  expect(told).toContain(`shelf.yaml, line ${at}, column ${column}: `);
});

test('a file in inches has its figures in inches already, and takes no other', () => {
  const text = SHELF.replace('wood:', 'units: in\nwood:')
    .replace(/(width|depth|height|rail|board): \d+ from \d+ to \d+/g, '$1: 20 from 1 to 90')
    .replace('width: 20 from', 'width: 20 or 21 in from');
  expect(() => pieceFrom(text, 'shelf.yaml')).toThrow(/in inches already: leave 'or 21 in' out/);
});

const names = readdirSync(new URL('../../pieces/', import.meta.url)).map((file) =>
  file.replace(/\.yaml$/, ''),
);

test.each(names)('%s begins at sixteenths for who works in inches, and has no error there', async (name) => {
  const model = pieceFrom(shippedPiece(name), `${name}.yaml`);
  const shop = builtInShop('in');
  const values = readParameters(model, {}, 'in');
  for (const [key, schema] of Object.entries(model.parameters.shape)) {
    if (parameterMeta(key, schema).kind !== 'length') continue;
    const sixteenths = (16 * Number(values[key])) / INCH;
    expect(sixteenths, key).toBeCloseTo(Math.round(sixteenths), 9);
  }
  const question = { model, shop, jig: plainJig(), units: 'in' } as const;
  // a wall may be told thinner than it is there, so what it finds is measured
  const quick = quickVerdictOf(question, values);
  const errorsOf = ({ findings, refused }: Verdict) => [
    ...(refused ? [refused.message] : []),
    ...findings.filter(({ level }) => level === 'error'),
  ];
  expect(errorsOf(errorsOf(quick).length > 0 ? await verdictOf(question, values) : quick)).toEqual([]);
});

import { describe, expect, test } from 'vitest';
import {
  angleOf,
  figureOf,
  formulaOf,
  lengthOf,
  namesOf,
  numberOf,
  Problem,
  type Quantity,
  type Scope,
  type Wanted,
  yesOf,
} from '../../src/notation/index.js';

const KNOWN: ReadonlyMap<string, Quantity> = new Map([
  ['leg', lengthOf(42)],
  ['foot', lengthOf(25)],
  ['apron thick', lengthOf(22)],
  ['height', lengthOf(600)],
  ['rake', angleOf(8)],
  ['shelves', numberOf(3)],
  ['n', numberOf(2)],
  ['nothing', lengthOf(0)],
  ['huge', numberOf(1e200)],
  ['unsaid', lengthOf(Number.NaN)],
  ['lid', yesOf(true)],
]);

const scope: Scope = Object.assign((name: string) => KNOWN.get(name), { known: [...KNOWN.keys()] });

const read = (text: string, wanted: Wanted = 'length', units: 'mm' | 'in' = 'mm'): number =>
  figureOf(formulaOf({ value: text, at: { line: 7, column: 11 } }), scope, wanted, units);

const refusal = (text: string, wanted: Wanted = 'length'): string => {
  try {
    return String(read(text, wanted));
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return `${error.at.line}:${error.at.column}+${error.length} ${error.message}`;
  }
};

test.each<[string, number]>([
  ['leg - apron thick / 2 - 10', 21],
  ['(n - 1) × 240 + leg', 282],
  ['260 - 40 × n', 180],
  ['3 × 25.5', 76.5],
  ['9-1/16"', 230.1875],
  ['9 1/16 in', 230.1875],
  ['10-3/8 in', 263.525],
  ['10 - 3/8 in', 0.475],
  ['9½″ − ½"', 228.6],
  ['1\' 2-1/2"', 368.3],
  ['2 m - 30 cm + 4', 1704],
  ['height ÷ 2 · 3', 900],
  ['max(leg, 50, foot)', 50],
  ['min(leg, foot) × 2', 50],
  ['-leg + 50', 8],
  ['- - 8', 8],
  ['abs(foot - leg)', 17],
  ['sqrt(leg * leg)', 42],
  ['240 × (leg / foot)', 403.2],
  ['2 × 3/8 in', 19.05],
  ['up(height / leg) × 10', 150],
  ['leg * sin(30)', 21],
  ['leg × cos(60°)', 21],
  ['up(0.1 × 3 × 10) × 1 mm', 3],
])('%s is %f mm', (text, mm) => {
  expect(read(text)).toBeCloseTo(mm, 9);
});

test('a bare number beside lengths, and by itself where a length is wanted, is in the units of the file', () => {
  expect(read('2', 'length', 'in')).toBe(50.8);
  expect(read('leg + 1', 'length', 'in')).toBe(67.4);
  expect(read('1 1/2', 'length', 'in')).toBeCloseTo(38.1, 12);
  expect(read('leg × 2', 'length', 'in')).toBe(84);
  expect(read('(n + 1) × 2 + 20 mm', 'length', 'in')).toBe(172.4);
  expect(read('leg > 1.6', 'yes', 'in')).toBe(1);
});

test('angles, plain numbers, and yes or no', () => {
  expect(read('rake + 2', 'angle')).toBe(10);
  expect(read('7½°', 'angle')).toBe(7.5);
  expect(read('atan(foot / leg)', 'angle')).toBeCloseTo(30.763, 3);
  expect(read('asin(0.5)', 'angle')).toBeCloseTo(30, 12);
  expect(read('shelves + 1', 'number')).toBe(4);
  expect(read('down((height - 20) / foot)', 'number')).toBe(23);
  expect(read('foot <= leg and not lid or n = 2', 'yes')).toBe(1);
  expect(read('not lid', 'yes')).toBe(0);
  // 0.1 + 0.2 is no more than 0.3
  expect(read('0.1 + 0.2 <= 0.3', 'yes')).toBe(1);
  expect(read('0.1 + 0.2 > 0.3', 'yes')).toBe(0);
});

test('names that stand in a formula, each once', () => {
  const of = formulaOf({ value: 'leg - max(apron thick, leg) × 2 mm', at: { line: 1, column: 1 } });
  expect(namesOf(of)).toEqual(['leg', 'apron thick']);
});

describe('a formula that cannot be is told where and why', () => {
  test.each<[string, string, Wanted?]>([
    ['leg × foot', "7:11+10 a length is wanted, 'leg × foot' is an area"],
    ['leg + rake', "7:11+10 '+' joins a length, 'leg', and an angle, 'rake'"],
    ['40 - leg × foot', "7:11+15 '−' joins a plain number, '40', and an area, 'leg × foot'"],
    ['leg / foot', "7:11+10 a length is wanted, 'leg / foot' is a plain number: multiply by a figure"],
    ['shelves', "7:11+7 a length is wanted, 'shelves' is a plain number"],
    ['rake', "7:11+4 a length is wanted, 'rake' is an angle"],
    [
      'up(height / 20) × 5',
      "7:14+11 'up' is of a plain number, 'height / 20' is a length: divide by a length",
    ],
    ['leg × sin(foot)', "7:21+4 'sin' is of an angle, 'foot' is a length"],
    ['max(leg, rake)', "7:20+4 'max' is of figures of one kind, 'rake' is an angle"],
    ['leg > rake', "7:11+10 a length, 'leg', cannot be compared with an angle, 'rake'", 'yes'],
    ['leg', "7:11+3 yes or no is wanted, 'leg' is a length", 'yes'],
    ['lid + 3', "7:11+3 'lid' is yes or no, a figure is wanted"],
    ['not leg', "7:15+3 yes or no is wanted, 'leg' is a length", 'yes'],
    ['leg + fooot', "7:17+5 nothing is called 'fooot': did you mean 'foot'?"],
    ['constructor', "7:11+11 nothing is called 'constructor'"],
    ['toString(3)', "7:11+11 there is no function 'toString'"],
    ['sine(3)', "7:11+7 there is no function 'sine': did you mean 'sin'?"],
    ['leg leg', "7:11+7 nothing is called 'leg leg'"],
    ['2 leg', "7:13+3 a sign is missing before 'leg'"],
    ['2 (leg)', "7:13+1 a sign is missing before '('"],
    ['leg -', '7:16+0 the formula ends here'],
    ['', '7:11+0 a formula is missing'],
    ['leg × × 2', "7:17+1 a figure or a name is missing before '*'"],
    ['(leg + 2', '7:11+1 this bracket is never closed'],
    ['leg + 2)', '7:18+1 no bracket is open here'],
    ['1,5 + leg', "7:12+1 ',' stands between the figures of a function: use a point for decimals"],
    ['(1,5)', '7:11+5 only a function takes several figures'],
    ['leg ^ 2', "7:15+1 '^' has no place in a formula"],
    ['leg; foot', "7:14+1 ';' has no place in a formula"],
    ['height / nothing', "7:20+7 'nothing' is 0 here"],
    ['sqrt(foot - leg)', "7:11+16 'foot - leg' is less than 0 here"],
    ['acos(leg / foot)', "7:16+10 'acos' is of a number from -1 to 1", 'angle'],
    ['sqrt(1, 2)', "7:11+10 'sqrt' takes one figure, not 2"],
    ['1 < 2 < 3', "7:17+1 two comparisons stand in one: join them by 'and'", 'yes'],
    [`${'('.repeat(21)}1${')'.repeat(21)}`, '7:31+1 there are more than 20 brackets'],
    [`${'-'.repeat(21)}1`, '7:31+1 there are more than 20 brackets'],
    ['1'.repeat(201), '7:11+201 a formula of 201 letters is too long; it may have 200'],
    ['1/0 in', "7:11+6 '1/0 in' divides by zero"],
    ['huge × huge', "7:11+11 'huge × huge' is too large to work with"],
    ['leg + unsaid', "7:17+6 'unsaid' has no value: give it one"],
  ])('%s', (text, told, wanted = 'length') => {
    expect(refusal(text, wanted).slice(0, told.length)).toBe(told);
  });
});

import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/errors.js';
import { speaker } from '../../src/length/index.js';
import { parameterMeta } from '../../src/model/index.js';
import { dimensionOf, holdMusts, knownFrom, Problems, readPiece } from '../../src/notation/index.js';

const SHED_SHELF = `design: shed-shelf
title: Shelf over the potting bench
wood: wood
piece: [width, depth, height]   # what it fills
dimensions:
  width: 800 from 400 to 1000; Outside, left to right
  height: 36" from 12 in to 2 m; Floor to the top
  depth: max(180, width / 4) from 150 to 400; Front to back
  lean: 8° from 0° to 15°
  shelves: how many 3 from 1 to 6; Shelves: between bottom and top
  lid: yes; With a lid
  wood: one of white ash, white oak or beech; What it is made of
  alcove: as built 912.5; Measured between the walls
worked out:
  pitch: (height - 60) / (shelves + 1)
must:
  - width <= alcove - 10: make it narrower
  - pitch >= 120: take fewer shelves
boards:
  side: { grain: up, face: right, taper: { sides: right and back, to: 25 } }
  "shelf":
    middle: [60 short of left of side, middle of side]
    repeat: shelves
joints:
  shelf to side:
  shelf and side to lid: { tenons: 2 }
`.replace('Shelves: between', 'Shelves between');

const read = (text: string, values: Readonly<Record<string, unknown>> = {}) => {
  const problems = new Problems('piece.yaml', text);
  const tree = readPiece(text, problems);
  const dimensions = (tree?.dimensions ?? []).flatMap(
    (line) => problems.during(() => dimensionOf(line, tree!.units)) ?? [],
  );
  const defaults = Object.fromEntries(
    dimensions.flatMap(({ parameter, schema }) => {
      const found = schema && parameterMeta(parameter, schema).default;
      return found === undefined ? [] : [[parameter, found]];
    }),
  );
  const known = tree && knownFrom(tree, dimensions, { ...defaults, ...values }, problems);
  if (tree && known) holdMusts(tree, known.scope, problems);
  return { tree, dimensions, known, problems };
};

/** What is told of a file, a line each, without the quoted lines. */
const told = (text: string, values: Readonly<Record<string, unknown>> = {}): readonly string[] => {
  try {
    read(text, values).problems.end();
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return (error as InputError)
      .explain(speaker('mm'))
      .split('\n')
      .filter((line) => /line \d/.test(line));
  }
  return [];
};

test('a file is a tree in which every word has its place', () => {
  const { tree, problems } = read(SHED_SHELF);
  problems.end();
  expect(tree!.title).toEqual({ value: 'Shelf over the potting bench', at: { line: 2, column: 8 } });
  expect(tree!.piece.map(({ at }) => at.column)).toEqual([9, 16, 23]);
  expect(tree!.must[1]).toMatchObject({
    left: { value: 'pitch', at: { line: 18, column: 5 } },
    relation: '>=',
    right: { value: '120', at: { line: 18, column: 14 } },
    cure: { value: 'take fewer shelves', at: { line: 18, column: 19 } },
  });
  const [side, shelf] = tree!.boards;
  expect(shelf!.name).toEqual({ value: 'shelf', at: { line: 21, column: 3 } });
  const taper = side!.keys.get('taper')!.said.value as ReadonlyMap<string, unknown>;
  expect(taper.get('sides')).toEqual({
    at: { line: 20, column: 44 },
    said: { value: 'right and back', at: { line: 20, column: 51 } },
  });
  expect(shelf!.keys.get('middle')!.said.value).toEqual([
    { value: '60 short of left of side', at: { line: 22, column: 14 } },
    { value: 'middle of side', at: { line: 22, column: 40 } },
  ]);
  expect(tree!.joints.map(({ a, b, options }) => [a.value, b.value, options.size])).toEqual([
    ['shelf', 'side', 0],
    ['shelf and side', 'lid', 1],
  ]);
});

test('dimensions become parameters of their kind, and sizes that are there do not', () => {
  const { dimensions } = read(SHED_SHELF);
  const metas = dimensions.map(({ parameter, schema }) => schema && parameterMeta(parameter, schema));
  expect(metas).toMatchObject([
    { kind: 'length', default: 800, min: 400, max: 1000, help: 'Outside, left to right' },
    { kind: 'length', default: 914.4, min: 304.8, max: 2000 },
    { kind: 'length', derived: 'max(180, width / 4)', min: 150, max: 400 },
    { kind: 'angle', default: 8, min: 0, max: 15, help: 'Lean' },
    { kind: 'count', default: 3, min: 1, max: 6 },
    { kind: 'flag', default: true },
    { kind: 'choice', default: 'white ash', choices: ['white ash', 'white oak', 'beech'] },
    undefined,
  ]);
});

test('a name stands for what was given, else for what it is worked out from, as near as its range allows', () => {
  const at = (values: Readonly<Record<string, unknown>>, name: string) =>
    read(SHED_SHELF, values).known!.scope(name);
  expect(at({}, 'depth')).toMatchObject({ value: 200, lengths: 1 });
  expect(at({ width: 900 }, 'depth')).toMatchObject({ value: 225 });
  expect(at({ width: 900, depth: 300 }, 'depth')).toMatchObject({ value: 300 });
  expect(at({ width: 5000 }, 'depth')).toMatchObject({ value: 400 });
  expect(at({ shelves: 1 }, 'pitch')).toMatchObject({ value: 427.2, lengths: 1 });
  expect(at({}, 'alcove')).toMatchObject({ value: 912.5, lengths: 1 });
  expect(at({ lid: false }, 'lid')).toMatchObject({ value: 0, yes: true });
  expect(read(SHED_SHELF, { wood: 'beech' }).known!.words.get('wood')).toBe('beech');
});

test('what must hold and does not is told with its figures and the cure, all of it at once', () => {
  expect(told(SHED_SHELF, { width: 903, height: 400 })).toEqual([
    "piece.yaml, line 17, column 5: 'width' is 903 mm, and must be at most 902.5 mm, 'alcove - 10': make it narrower",
    "piece.yaml, line 18, column 5: 'pitch' is 85 mm, and must be at least 120 mm: take fewer shelves",
  ]);
});

describe('a file that cannot be is told where, why, and what to write', () => {
  test.each<[string, string, string, string]>([
    [
      'a name no folder can have',
      'design: shed-shelf',
      'design: Shed Shelf',
      "1:9 'Shed Shelf' cannot name a folder: write small letters, digits and hyphens, like shed-shelf",
    ],
    [
      'a section nobody knows',
      'worked out:',
      'wroked out:',
      "14:1 a piece has no 'wroked out': did you mean 'worked out'?",
    ],
    ['a box of two sizes', '[width, depth, height]', '[width, depth]', "4:8 'piece' has three sizes"],
    [
      'a dimension without range',
      '800 from 400 to 1000;',
      '800;',
      "6:10 '800' does not say from what to what it may be",
    ],
    [
      'a start outside its range',
      '800 from',
      '300 from',
      '6:10 300 is not from 400 to 1000: widen the range',
    ],
    [
      'a range the wrong way round',
      'from 1 to 6',
      'from 6 to 1',
      "10:12 the range ends before it begins: write 'from 1 to 6'",
    ],
    ['half a shelf', 'how many 3 ', 'how many 3.5 ', "10:21 '3.5' is no whole number"],
    [
      'angle and length in one range',
      '8° from 0°',
      '8 mm from 0°',
      "9:9 an angle is wanted, '8 mm' is a length",
    ],
    [
      'a dimension in a range',
      'from 400 to 1000',
      'from 400 to depth',
      "6:26 'depth' is no figure: a range ends at figures",
    ],
    [
      'a start from a name told below',
      'max(180, width / 4)',
      'alcove / 4',
      "8:10 'alcove' is told further down",
    ],
    [
      'a word where a figure is wanted',
      '(height - 60)',
      '(height - wood)',
      "15:20 'wood' is a word, and a figure is wanted",
    ],
    [
      'one choice',
      'one of white ash, white oak or beech',
      'one of white ash',
      '12:16 there is nothing to choose between',
    ],
    ['a name of capital letters', '  lid:', '  Lid:', "11:3 'Lid' cannot name a dimension"],
    [
      'a name that joins formulas',
      '  lid:',
      '  lid and all:',
      "11:3 'and' has a meaning of its own in formulas",
    ],
    [
      'a name of the language underneath',
      '  lid:',
      '  __proto__:',
      "11:3 '__proto__' cannot name a dimension",
    ],
    ['a name twice', '  lid:', '  lean:', "11:3 'lean' is told twice, first on line 9: leave one out"],
    ['a name worked out and given', '  pitch:', '  lid: 3\n  pitch:', "15:3 'lid' is a dimension already"],
    [
      'a must without a cure',
      ' 120: take fewer shelves',
      ' 120',
      '18:5 this does not say what to do when it is not so',
    ],
    ['a must that compares nothing', 'pitch >= 120', 'pitch 120', "18:5 'pitch 120' compares nothing"],
    [
      'a must that compares unlike kinds',
      'pitch >= 120',
      'pitch >= lean',
      "18:5 a length, 'pitch', cannot be compared with an angle, 'lean'",
    ],
    [
      'a joint of one board',
      '  shelf to side:',
      '  shelf side:',
      "25:3 'shelf side' does not name two boards: write 'apron to leg'",
    ],
    ['an option without a key', '  shelf to side:', '  shelf to side: 3', '25:18 keys are wanted here'],
    ['no wood', 'wood: wood\n', '', "1:1 the piece does not say its 'wood'"],
    ['units of another trade', 'wood: wood', 'units: cm\nwood: wood', "3:8 'cm' is neither mm nor in"],
    [
      'a bracket that is never closed',
      'to: 25 } }',
      'to: 25 }',
      '20:9 this bracket is never closed: write } where it ends',
    ],
    [
      'a comma that is missing',
      'grain: up, face',
      'grain: up face',
      '20:18 a comma is missing in this: between brackets',
    ],
    [
      'a comma inside a phrase',
      'to: 25 }',
      'to: 25, about }',
      "20:75 nothing is told of 'about': between { } a comma ends a phrase",
    ],
    [
      'no blank after a colon',
      'to: 25 }',
      'to:25 }',
      "20:67 nothing is told of 'to:25': write a blank after the colon",
    ],
    [
      'a colon in a phrase',
      'Shelves between',
      'Shelves: between',
      '10:12 this line is a phrase and a key at once: put a phrase that holds a colon in quotes',
    ],
    ['a quote that is never closed', 'title: Shelf', 'title: "Shelf', '2:8 this quote is never closed'],
    ['a tab', '  lid:', '\tlid:', '11:1 a tab stands before the first word: indent with blanks'],
    [
      'keys of one group in two columns',
      '  lid:',
      ' lid:',
      '11:1 this line begins in another column than those it belongs to',
    ],
    ['an anchor', 'wood: wood', 'wood: &w wood', "3:10 '&w' marks this place to be referred to"],
    ['an alias', 'wood: wood', 'wood: *w', "3:7 '*w' refers to another place of the file"],
    ['a tag', 'wood: wood', 'wood: !!str wood', "3:13 '!!str' names a kind of data"],
    ['a merge', 'wood: wood', 'wood: wood\n<<: { title: x }', "4:1 '<<' takes over keys of another place"],
    ['a second piece', 'worked out:', '---\nworked out:', '14:1 a second piece begins here'],
    [
      'no boards',
      'boards:',
      'planks:',
      "19:1 a piece has no 'planks': known are design|1:1 the piece has no boards",
    ],
  ])('%s', (_, from, to, expected) => {
    expect(SHED_SHELF).toContain(from);
    const found = told(SHED_SHELF.replace(from, to)).map((line) =>
      line.replace(/^piece\.yaml, line (\d+), column (\d+):/, '$1:$2'),
    );
    const wanted = expected.split('|').toSorted();
    expect(found.toSorted().map((line, at) => line.slice(0, wanted[at]?.length))).toEqual(wanted);
  });

  test('a name whose own line is wrong is told there and not again where it is used', () => {
    const broken = SHED_SHELF.replace('800 from', '800 form')
      .replace('to 2 m', 'to 2 n')
      .replace('pitch >=', 'pich >=');
    expect(
      told(broken).map((line) => line.replace(/^piece\.yaml, (line \d+).*?: (.*?):? .*$/, '$1')),
    ).toHaveLength(3);
  });

  test.each([
    ['', /line 1, column 1: this is no piece/],
    ['hello', /line 1, column 1: this is no piece/],
    [`${'['.repeat(30_000)}`, /too many brackets within each other|never closed/],
    ['a: 1\n'.repeat(20_000), /the file holds 98 KB, 64 KB is the limit/],
    [
      `design: x\ndimensions:\n${Array.from({ length: 61 }, (_, at) => `  a${at}: yes\n`).join('')}`,
      /'dimensions' holds 61 entries, 60 is the limit/,
    ],
    [
      `design: x\nboards:\n${Array.from({ length: 201 }, (_, at) => `  a${at}: {}\n`).join('')}`,
      /'boards' holds 201 entries, 200 is the limit/,
    ],
  ])('%.20s', (text, expected) => {
    expect(told(text).join('\n')).toMatch(expected);
  });
});

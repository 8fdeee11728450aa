import { expect, test } from 'vitest';
import { InputError } from '../../src/errors.js';
import { readParameters } from '../../src/model/index.js';
import { pieceFrom } from '../../src/notation/index.js';

const TABLE = `design: potting-table
wood: white ash
piece: [width, depth, height]
dimensions:
  width: 600 from 400 to 900; Length of the top
  depth: 450 from 300 to 700; Width of the top
  height: 700 from 400 to 900; Floor to the top
  top: 22 from 18 to 35; Thickness of the top
  overhang: 30 from 0 to 80; Top beyond the legs
  leg: 45 from 35 to 70; Leg at its top
  foot: 28 from 20 to 70; Leg at the floor
  apron: 90 from 50 to 140; Width of the aprons
  board: 22 from 16 to 30; Thickness of the aprons
  splay: 6° from 0° to 12°; Lean of the brace
must:
  - foot <= leg: the taper takes wood away, it adds none
boards:
  table top: { grain: left-right, face: up, top: piece, thick: top, like: piece }
  leg:
    grain: up
    face: front
    left: overhang short of table top
    front: overhang short of table top
    wide: leg
    thick: leg
    top: bottom of table top
    bottom: floor
    taper: { sides: right and back, to: foot, at: bottom, starts: apron + 20 below top }
    mirrored: left-right and front-back
  long apron:
    grain: left-right
    face: front
    between: front left leg and front right leg
    front: 6 short of leg
    thick: board
    top: leg
    wide: apron
    mirrored: front-back
  side apron:
    grain: front-back
    face: left
    between: front left leg and back left leg
    left: 6 short of leg
    thick: board
    top: leg
    wide: apron
    mirrored: left-right
joints:
  apron to leg: { tenons: 1, inset: 14 }
held:
  table top to apron: { by: buttons, every: 200 }
`;

/** Every problem told, as \`line:column words\`. */
const told = (text: string): readonly string[] => {
  try {
    const piece = pieceFrom(text, 'table.yaml', ['out']);
    piece.build(readParameters(piece, {}, 'mm'));
    return [];
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return [...(error as Error).message.matchAll(/^table\.yaml, line (\d+), column (\d+): (.*)$/gm)].map(
      ([, line, column, words]) => `${line}:${column} ${words}`,
    );
  }
};

test('the file they are slips of is sound', () => {
  expect(told(TABLE)).toEqual([]);
});

test.each<[what: string, from: string, to: string, told: string]>([
  [
    'a board nobody told',
    'of table top\n    front',
    'of tabel top\n    front',
    "22:29 there is no board 'tabel top' above this line: did you mean 'table top'?",
  ],
  [
    'an area for a length',
    'wide: leg',
    'wide: leg × foot',
    "24:11 a length is wanted, 'leg × foot' is an area",
  ],
  [
    'a length and an angle multiplied',
    'wide: apron',
    'wide: apron × splay',
    "37:11 a length is wanted, 'apron × splay' is a length and an angle multiplied",
  ],
  [
    'a measure from nothing',
    'left: 6 short of leg',
    'left: 6',
    "43:11 '6' is measured from nothing: write '6 short of left of piece'",
  ],
  [
    'told too much',
    '    bottom: floor',
    '    bottom: floor\n    long: 500',
    "19:3 board 'leg' is told too much up-down: bottom, top, long: leave one out",
  ],
  [
    'told too little',
    '    wide: leg\n',
    '',
    "19:3 nothing says where board 'leg' stands left-right; only its left is told",
  ],
  [
    'letters that changed places',
    'wide: leg',
    'wdie: leg',
    "24:5 board 'leg' knows no 'wdie': did you mean 'wide'?",
  ],
  [
    'a way no grain runs',
    'grain: up',
    'grain: upward',
    "20:12 'upward' cannot stand here: known are left-right, front-back, up",
  ],
  ['no grain', '    grain: up\n', '', "19:3 board 'leg' does not say its 'grain'"],
  [
    'a face along the grain',
    'face: left',
    'face: front',
    '41:11 a face cannot look front when the grain runs front-back',
  ],
  [
    'sides that are crossed',
    'thick: top,',
    'thick: 900,',
    "19:3 board 'leg' would be -200 mm long: its sides up-down are crossed or meet",
  ],
  [
    'a taper longer than its leg',
    'top: bottom of table top',
    'top: 20 above floor',
    '28:5 the taper starts beyond its end',
  ],
  [
    'a taper that adds wood',
    'to: foot,',
    'to: 2 × leg,',
    '28:41 a taper to 90 mm adds wood: the board is 45 mm there',
  ],
  [
    'nothing to stand between',
    'and front right leg',
    'and front left leg',
    "33:14 nothing is between 'front left leg' and 'front left leg'",
  ],
  [
    'between one thing',
    'between: front left leg and back left leg',
    'between: front left leg',
    "42:14 'front left leg' does not name two things",
  ],
  ['a side no board has', 'right and back,', 'right and rear,', "28:31 'rear' is no side of a board"],
  [
    'half a mirror',
    'mirrored: left-right and',
    'mirrored: left and',
    "29:15 'left' cannot stand here: known are left-right",
  ],
  [
    'a dimension nobody told',
    'thick: board',
    'thick: baord',
    "35:12 nothing is called 'baord': did you mean 'board'?",
  ],
  [
    'a joint with nobody',
    'apron to leg:',
    'apron to legg:',
    "49:12 there is no board 'legg' above this line: did you mean 'leg'?",
  ],
  [
    'a joint of boards apart',
    'apron to leg:',
    'leg to leg:',
    "49:3 'front left leg' touches no leg: the nearest, 'back left leg', is 300 mm away front-back",
  ],
  [
    'an option nobody knows',
    'tenons: 1',
    'tenon: 1',
    "49:19 a joint knows no 'tenon': did you mean 'tenons'?",
  ],
  [
    'half a tenon',
    'tenons: 1',
    'tenons: 1.5',
    '49:3 joint front-long-apron/front-left-leg: it asks for 1.5 tenons',
  ],
  [
    'no room for tenons',
    'tenons: 1',
    'tenons: 9',
    '49:3 joint front-long-apron/front-left-leg: its seat is 90.0 mm long',
  ],
  ['an angle for a length', 'inset: 14', 'inset: 8°', "49:37 a length is wanted, '8°' is an angle"],
  ['held by nothing we know', 'by: buttons', 'by: bolts', "51:29 'bolts' cannot stand here"],
  [
    'a wood of no table',
    'wood: white ash',
    'wood: whtie ash',
    "2:7 there is no wood 'whtie ash' in the tables: did you mean 'white ash'?",
  ],
  [
    'a wood told short',
    'wood: white ash',
    'wood: oak',
    "2:7 there is no wood 'oak' in the tables: did you mean 'northern red oak' or 'white oak'?",
  ],
  [
    'a range misspelt',
    'leg: 45 from',
    'leg: 45 form',
    "10:8 '45 form 35 to 70' is no dimension: write '800 from 400 to 1000; what it is'",
  ],
  [
    'a size without a range',
    'leg: 45 from 35 to 70',
    'leg: 45',
    "10:8 '45' does not say from what to what it may be: write '45 from … to …; what it is', or 'as built 45'",
  ],
  [
    'what must not be',
    'foot: 28',
    'foot: 45 mm + 1',
    "16:5 'foot' is 46 mm, and must be at most 45 mm, 'leg'|28:41 a taper to 46 mm adds wood",
  ],
  ['an option that is taken', '  splay:', '  out:', '14:3 --out is an option of the program already'],
])('%s', (_, from, to, expected) => {
  expect(TABLE).toContain(from);
  const found = told(TABLE.replace(from, to));
  const wanted = expected.split('|');
  expect(found.map((line, at) => line.slice(0, wanted[at]?.length))).toEqual(wanted);
});

test('what is wrong in several boards and dimensions is told at once, and nothing that only follows from it', () => {
  const slipped = TABLE.replace('splay: 6° from', 'splay: 6° form')
    .replace('wide: leg', 'wdie: leg')
    .replace('left: 6 short', 'left: 6 shrt')
    .replace('apron to leg', 'apron to leg to top');
  expect(told(slipped).map((line) => line.replace(/ .*/, ''))).toEqual(['14:10', '24:5', '43:11', '49:3']);
});

test('a file in inches is the same piece: bare numbers are inches, and other units stay what they are', () => {
  const inInches = TABLE.replace('wood:', 'units: in\nwood:')
    .replace(/^( {2}[a-z ]+: )(\d+) from (\d+) to (\d+)/gm, '$1$2 mm from $3 mm to $4 mm')
    .replace('apron + 20', 'apron + 20 mm')
    .replaceAll('6 short', '6 mm short')
    .replace('inset: 14', 'inset: 14 mm')
    .replace('every: 200', 'every: 200 mm');
  const built = (text: string) => {
    const piece = pieceFrom(text, 'table.yaml');
    return piece.build(readParameters(piece, {}, 'mm'));
  };
  expect(built(inInches)).toEqual(built(TABLE));
});

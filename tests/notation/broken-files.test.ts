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

test.each<[string, string, string]>([
  ['of table top\n    front', 'of tabel top\n    front', ''],
  ['wide: leg', 'wide: leg × foot', ''],
  ['left: 6 short of leg', 'left: 6', ''],
  ['    bottom: floor', '    bottom: floor\n    long: 500', ''],
  ['    wide: leg\n', '', ''],
  ['wide: leg', 'wdie: leg', ''],
  ['grain: up', 'grain: upward', ''],
  ['    grain: up\n', '', ''],
  ['face: left', 'face: front', ''],
  ['top: bottom of table top', 'top: 20 above floor', ''],
  ['left right leg', 'left leg', ''],
  ['and front right leg', 'and front left leg', ''],
  ['between: front left leg and back left leg', 'between: front left leg', ''],
  ['sides: right and back', 'sides: right and rear', ''],
  ['to: foot,', 'to: 2 × leg,', ''],
  ['mirrored: left-right and', 'mirrored: left and', ''],
  ['apron to leg:', 'apron to legg:', ''],
  ['apron to leg:', 'table top to apron and leg:', ''],
  ['apron to leg:', 'leg to leg:', ''],
  ['tenons: 1', 'tenon: 1', ''],
  ['tenons: 1', 'tenons: 1.5', ''],
  ['tenons: 1', 'tenons: 9', ''],
  ['inset: 14', 'inset: 8°', ''],
  ['by: buttons', 'by: bolts', ''],
  ['wood: white ash', 'wood: whtie ash', ''],
  ['wood: white ash', 'wood: ash', ''],
  ['leg: 45 from', 'leg: 45 form', ''],
  ['leg: 45 from 35 to 70', 'leg: 45', ''],
  ['foot: 28', 'foot: 60', ''],
  ['width: 600', 'out: 600', ''],
  ['mirrored: front-back\n', 'mirrored: front-back\n    like: nothing\n', ''],
  ['    thick: board\n    top', '    thick: baord\n    top', ''],
  ['  side apron:', '  long apron:', ''],
  ['thick: top,', 'thick: 900,', ''],
  ['wide: apron\n    mirrored: front', 'wide: apron × splay\n    mirrored: front', ''],
])('%s → %s', (from, to, expected) => {
  if (!TABLE.includes(from)) { console.log('NO', from); return; }
  console.log(JSON.stringify(to), told(TABLE.replace(from, to)));
  void expected;
});

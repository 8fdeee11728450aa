import { expect, test } from 'vitest';
import { builtInShop } from '../../src/shop/index.js';
import { verdictOf } from '../../src/verdict/index.js';
import { findings } from '../checks/sample-design.js';
import { plainJig } from '../shop/designs.js';
import { builtPiece, pieceModel, shippedPiece } from './built-piece.js';

const errors = async (text: string) =>
  (await findings(builtPiece(text))).filter(({ level }) => level === 'error');

const TOP = `design: shed-top
wood: white oak
piece: [700, 400, 300]
boards:
  end: { grain: up, face: left, left: 60 short of piece, thick: 25, front: piece, back: piece, bottom: floor, top: 30 below top of piece, mirrored: left-right }
  rail: { grain: left-right, face: up, between: left end and right end, thick: 25, wide: 60, front: 20 short of end, top: end, mirrored: front-back }
  top board: { grain: left-right, face: up, bottom: top of end, thick: 30, like: piece }
joints:
  rail to end: { tenons: 1 }
held:
  top board to rail: { by: slotted screws, every: 120 }
`;

test('a top held by slotted screws may move as far as its wood does', async () => {
  const design = builtPiece(TOP);
  // 530 long, 75 from either end, no more than 120 apart: 380 / 120 is 4 gaps, 5 screws on each rail
  expect(design.fastenings!.map(({ by, held, to }) => `${by} ${held} ${to}`)).toEqual([
    ...Array(5).fill('screw top-board front-rail'),
    ...Array(5).fill('screw top-board back-rail'),
  ]);
  // the rails' middles stand 150 from the middle of the top; white oak, 0.00365 a point (Wood Handbook, table 13-5), six points
  for (const { travel } of design.fastenings!) expect(travel).toBeCloseTo(0.00365 * 6 * 150, 2);
  expect(await errors(TOP)).toEqual([]);
});

test('screws are as long as they are told, and too short ones are refused at their line', () => {
  const of = (more: string) => builtPiece(TOP.replace('every: 120', `every: 120, screw: 4, ${more}`));
  for (const { screw } of of('long: 40').fastenings!)
    expect(screw).toMatchObject({ diameter: 4, length: 40 });
  expect(() => of('long: 12')).toThrow(/line 11.*screws are 12\.0 mm long.*take longer screws/s);
});

test('a panel whose groove no cutter fits is told how thick to be, and so it is cut', async () => {
  const uncut = async (thick: string) => {
    const model = pieceModel(
      shippedPiece('panelled-door').replaceAll('thick: cutter - 0.2', `thick: ${thick}`),
    );
    const question = { model, shop: builtInShop('mm'), jig: plainJig(), units: 'mm' } as const;
    return (await verdictOf(question, {})).findings.filter(({ code }) => code === 'groove-not-cut');
  };
  const [found] = await uncut('9');
  const told = /^make (?:lower|upper)-panel ([\d.]+) mm thick/.exec(found!.remedy)![1]!;
  expect(await uncut(told)).toEqual([]);
});

test('nothing is held by its end: neither a button nor a screw holds in end grain', () => {
  const shelf = [
    'design: shelf',
    'wood: white ash',
    'piece: [420, 300, 500]',
    'boards:',
    '  side: { grain: up, face: left, left: piece, thick: 22, like: piece, mirrored: left-right }',
    '  shelf: { grain: left-right, face: up, between: left side and right side, thick: 22, bottom: 200 short of side, like: side }',
    'held:',
    '  shelf to side: { by: slotted screws }',
    '',
  ].join('\n');
  expect(() => builtPiece(shelf)).toThrow(/the end of shelf stands against left side.*join it by tenons/);
});

test('a panel cuts the grooves it sits in, and is held by all four boards round it', () => {
  const { captives, boards } = builtPiece(shippedPiece('panelled-door'));
  expect(
    captives!.map(({ panel, grooves }) => [panel, ...grooves.map(({ board }) => board).toSorted()]),
  ).toEqual([
    ['lower-panel', 'bottom-rail', 'left-stile', 'mid-rail', 'right-stile'],
    ['upper-panel', 'left-stile', 'mid-rail', 'right-stile', 'top-rail'],
  ]);
  const groovesOf = (id: string) => boards.find(({ board }) => board.id === id)!.board.grooves;
  // those of a stile stop in the wood at both ends, those of a rail run out under the stiles
  expect(groovesOf('left-stile').map(({ stopped }) => stopped)).toEqual([
    ['start', 'end'],
    ['start', 'end'],
  ]);
  expect(groovesOf('mid-rail').map(({ stopped }) => stopped)).toEqual([[], []]);
});

test('a panel of staves is that many boards, each joined to its neighbour', () => {
  const { boards, joints } = builtPiece(shippedPiece('tray'), { staves: 4 });
  const staves = boards.filter(({ board }) => board.id.startsWith('bottom-board'));
  expect(staves.map(({ board }) => board.blank.width)).toEqual(
    Array(4).fill(expect.closeTo((300 - 36) / 4, 9)),
  );
  expect(
    joints.filter(({ a, b }) => a.startsWith('bottom') && b.startsWith('bottom')).map(({ id }) => id),
  ).toEqual([
    'bottom-board-1/bottom-board-2',
    'bottom-board-2/bottom-board-3',
    'bottom-board-3/bottom-board-4',
  ]);
});

test('what a board is for, and who uses the piece, stand in its design; a use nobody can stand on is told at its word', () => {
  const bench = (use: string, more = '') =>
    `design: shed-bench\nwood: white oak\npiece: [700, 300, 450]\ndimensions:\n  small ones: yes; Whether children use it\nboards:\n  seat: { grain: left-right, face: down, use: ${use}, top: piece, thick: 30, like: piece }\n  side: { grain: up, face: left, left: piece, thick: 25, bottom: floor, top: bottom of seat, like: piece, mirrored: left-right }\n${more}`;
  const told = builtPiece(bench('table top', 'used by: { heaviest: 95 kg, children: small ones }\n'));
  expect([told.uses, told.user]).toEqual([[{ board: 'seat', use: 'table-top' }], { kg: 95, child: true }]);
  expect(builtPiece(bench('seat', 'used by: { children: no }\n')).user).toEqual({ kg: 150, child: false });
  expect(() => builtPiece(bench('ladder'))).toThrow(/line 7, column 47: 'ladder' cannot stand here/);
  expect(() =>
    builtPiece(
      bench('none').replace(
        'thick: 25',
        'thick: 25, use: shelf, slope: { side: top, towards: front, from: 0 below top, to: 200 below top }',
      ),
    ),
  ).toThrow(/line 8, column 63: use shelf of left-side: none of its faces looks up within 20° of level/);
});

test('holes told only how far apart they are fill their side, in the middle or from where the first is told', () => {
  const alongside = (more: string): readonly number[] => {
    const rail = `  rail: { grain: left-right, face: front, front: piece, top: piece, wide: 90, thick: 25, like: piece, holes: { side: front, wide: 10, deep: 15, every: 110${more} } }`;
    const { boards } = builtPiece(
      `design: hook-rail\nwood: white oak\npiece: [700, 400, 300]\nboards:\n${rail}\n`,
    );
    return boards[0]!.board.holes.map(({ at }) => at.origin[0]).toSorted((a, b) => a - b);
  };
  // six of 110 and half a step at each end fit into 700: the ends keep 75
  expect(alongside('')).toEqual([75, 185, 295, 405, 515, 625]);
  expect(alongside(', count: 3')).toEqual([240, 350, 460]);
  // the board is measured from its right end: the first stands 100 from the left
  expect(alongside(', middle: [100 short of left]')).toEqual([160, 270, 380, 490, 600]);
});

test('holes for pins stand in rows', () => {
  const side = `  side: { grain: up, face: left, left: piece, thick: 25, like: piece, holes: { side: right, wide: 5, deep: 10, middle: [100 above bottom], rows: 40 short of front and 40 short of back, every: 32, count: 5 } }`;
  const { boards } = builtPiece(
    `design: shed-side\nwood: white oak\npiece: [700, 400, 300]\nboards:\n${side}\n`,
  );
  const { board } = boards[0]!;
  const face = board.holes[0]!.face;
  expect(new Set(board.holes.map((hole) => hole.face))).toEqual(new Set([face]));
  expect(board.holes.map(({ at }) => [at.origin[0], at.origin[1]])).toEqual(
    [360, 40].flatMap((y) => [100, 132, 164, 196, 228].map((x) => [x, y])),
  );
});

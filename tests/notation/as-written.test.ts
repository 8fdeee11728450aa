import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import { box, volume } from '../../src/solid/index.js';
import { onSolids } from '../checks/sample-design.js';
import { builtPiece, shippedPiece } from './built-piece.js';

/** A file with these boards in a box 800 × 400 × 700. */
const file = (boards: string, more = ''): string =>
  `design: shed-thing\nwood: white ash\npiece: [800, 400, 700]\nboards:\n${boards}\n${more}`;

const SIDES = `  side: { grain: up, face: left, thick: 25, wide: 300, middle: middle of piece, head: { left: 100 short of piece }, top: 600 above floor, bottom: floor, leans: { left: 10° }, mirrored: left-right }`;

const placed = (design: Design, id: string) => design.boards.find(({ board }) => board.id === id)!;

async function boxesOf(design: Design): Promise<Readonly<Record<string, readonly number[]>>> {
  return onSolids(design, (solids) =>
    Object.fromEntries(
      [...solids.boards].map(([id, { body }]) => {
        const { min, max } = box(body);
        return [id, [...min, ...max].map((part) => Math.round(part * 1e3) / 1e3 + 0)];
      }),
    ),
  );
}

/** What a new user writes who has read the page on the notation and nothing else. */
describe('boards between leaning sides', () => {
  test('a shelf whose face looks up lies level, its ends cut to the sides, its edges where they are told', async () => {
    const design = builtPiece(
      file(
        `${SIDES}\n  shelf: { grain: left-right, face: up, between: left side and right side, bottom: 300 above floor, thick: 22, front: side, back: side }`,
        'joints:\n  shelf to side: { tenons: 2 }',
      ),
    );
    const shelf = placed(design, 'shelf');
    expect(shelf.place.z[2]).toBeCloseTo(-1, 12);
    expect(shelf.board.bevels).toHaveLength(2);
    const found = await boxesOf(design);
    expect(found.shelf!.slice(1, 3)).toEqual([50, 300]);
    expect(found.shelf!.slice(4)).toEqual([350, 322]);
    // the outer face of a side stands at 100 + (600 − z) tan 10° less that, its inner one 25 / cos 10° further in
    const inner = 100 - 300 * Math.tan(Math.PI / 18) + 25 / Math.cos(Math.PI / 18);
    expect(found.shelf![0]).toBeCloseTo(inner, 3);
  });

  test('like: side fills what is open, as between upright sides', async () => {
    const design = builtPiece(
      file(
        `${SIDES}\n  shelf: { grain: left-right, face: up, between: left side and right side, bottom: 300 above floor, thick: 22, like: side }`,
      ),
    );
    expect((await boxesOf(design)).shelf!.slice(1, 3)).toEqual([50, 300]);
  });

  test('a board on edge stands by its bottom as by its middle', async () => {
    const rail = (where: string) =>
      boxesOf(
        builtPiece(
          file(
            `${SIDES}\n  rail: { grain: left-right, face: front, between: left side and right side, ${where}, wide: 80, thick: 22 }`,
          ),
        ),
      );
    expect(await rail('bottom: 200 above floor')).toEqual(await rail('middle: 240 above floor'));
  });
});

test('a leaning board stands by its foot, without trigonometry', async () => {
  const found = await boxesOf(
    builtPiece(file(SIDES.replace('head: { left: 100 short of piece }', 'foot: { left: piece }'))),
  );
  expect(found['left-side']![0]).toBe(0);
  expect(found['right-side']![3]).toBe(800);
});

test('a side alone of a leaning board is refused with both ways out', () => {
  const text = file(SIDES.replace('head: { left: 100 short of piece }', 'left: piece'));
  expect(() => builtPiece(text)).toThrow(
    /line 5, column 3: board 'side' leans there, so 'left' could be its head or its foot: write foot: \{ left: … \} or head: \{ left: … \}/,
  );
});

test('a top that slopes is told by its angle, and what stands under it is cut to it', async () => {
  const boards = `  lid: { grain: left-right, face: up, left: piece, right: piece, front: piece, back: piece, top: piece, thick: 20, slopes: { front: 10° } }
  side: { grain: up, face: left, left: 30 short of piece, thick: 20, front: 40 short of piece, back: 40 short of piece, bottom: floor, top: bottom of lid, mirrored: left-right }`;
  const design = builtPiece(file(boards, 'joints:\n  side to lid: { tenons: 2 }'));
  const found = await boxesOf(design);
  // the lid fills the box front to back and its back edge reaches the top
  expect(found.lid!.slice(1, 2)).toEqual([0]);
  expect(found.lid!.slice(4)).toEqual([400, 700]);
  // the lower back edge is 20 mm of wood below the upper one; from there the lower face falls 10°
  const high = 700 - 20 * Math.cos(Math.PI / 18) - 40 * Math.tan(Math.PI / 18);
  expect(found['left-side']![5]).toBeCloseTo(high, 3);
  expect(design.joints).toHaveLength(2);
});

test('an edge that slopes across a board', async () => {
  const side = (slope: string) =>
    `  side: { grain: up, face: left, left: piece, thick: 20, like: piece, slope: ${slope} }`;
  const volumeOf = (slope: string) =>
    onSolids(builtPiece(file(side(slope))), (solids) => volume(solids.boards.get('side')!.body));
  // from 700 at the back to 500 at the front
  expect(await volumeOf('{ side: top, from: 700, to: 500 }')).toBeCloseTo(20 * 400 * 600, 0);
  expect(await volumeOf('{ side: top, towards: back, from: 0 below top, to: 200 below top }')).toBeCloseTo(
    20 * 400 * 600,
    0,
  );
});

test('copies are spread from one place to another', async () => {
  const boards = `  post: { grain: up, face: left, left: piece, thick: 30, like: piece, mirrored: left-right }
  slat: { grain: left-right, face: front, between: left post and right post, front: post, thick: 15, wide: 50, evenly: from 20 above floor to top of post, repeat: 4 }`;
  const found = await boxesOf(builtPiece(file(boards)));
  expect(found['slat-1']![2]).toBe(20);
  expect(found['slat-4']![5]).toBe(700);
  expect(found['slat-2']![2]! - found['slat-1']![5]!).toBeCloseTo((680 - 200) / 3, 3);
});

test('several names joined by and are joined to one; a bevel over the whole width is cut', async () => {
  const boards = `  shelf: { grain: left-right, face: down, top: piece, thick: 22, like: piece, bevel: { corner: left front, long: 60, deep: 60 } }
  lip: { grain: left-right, face: front, top: bottom of shelf, wide: 40, thick: 22, front: piece, left: 100 short of piece, right: 100 short of piece }
  bracket: { grain: up, face: left, left: 200 short of piece, thick: 22, top: bottom of shelf, bottom: 300 above floor, back: piece, wide: 200, bevel: { corner: front bottom, long: 150, deep: 199 }, mirrored: left-right }`;
  const design = builtPiece(file(boards, 'joints:\n  lip and bracket to shelf:'));
  expect(design.joints.map(({ id }) => id)).toEqual([
    'lip/shelf',
    'left-bracket/shelf',
    'right-bracket/shelf',
  ]);
  const [shelf, bracket] = await onSolids(design, ({ boards: solids }) =>
    ['shelf', 'left-bracket'].map((id) => volume(solids.get(id)!.stock)),
  );
  expect(shelf).toBeCloseTo(22 * (800 * 400 - 60 * 30), 0);
  expect(bracket).toBeCloseTo(22 * (200 * 378 - (150 * 199) / 2), 0);
});

test.each([
  ['round: 15', /'round' needs more than that: write round: \{ corners: all, radius: 15 \}/],
  ['thick: board', /nothing is called 'board'/],
  ['left: 30', /'30' is measured from nothing: write '30 short of left of piece' or '30 above floor'/],
  ['notch: { corner: front top, long: 900, deep: 20 }', /line 5, column \d+: /],
  ['shelf: 3', /board 'side' knows no 'shelf'/],
])('%s is refused at its line with a way out', (told, text) => {
  const keys = new Map([
    ['left', 'left: piece'],
    ['thick', 'thick: 20'],
  ]);
  const key = told.split(':')[0]!;
  keys.set(key, told);
  expect(() =>
    builtPiece(file(`  side: { grain: up, face: left, ${[...keys.values()].join(', ')}, like: piece }`)),
  ).toThrow(text);
});

test('a board that touches none of those it is joined to is told with the nearest and its gap', () => {
  const boards = `  post: { grain: up, face: left, left: piece, thick: 30, like: piece, mirrored: left-right }
  rail: { grain: left-right, face: front, left: 35 short of piece, right: 60 short of piece, front: piece, thick: 20, top: piece, wide: 60 }`;
  expect(() => builtPiece(file(boards, 'joints:\n  rail to post:'))).toThrow(
    /line 8, column 3: 'rail' touches no post: the nearest, 'left post', is 5 mm away left-right/,
  );
});

test('each board is told its own problem, and what follows from it is not told', () => {
  const boards = `  post: { grain: up, face: left, left: piece, thick: 30, wdie: 40, mirrored: left-right }
  rail: { grain: left-right, face: front, between: left post and right post, front: piece, thick: 20, top: piece, wide: 60 }
  lid: { grain: left-right, face: up, top: piece, thick: 20, like: piec }`;
  const told = (): string => {
    try {
      builtPiece(file(boards, 'joints:\n  rail to post:'));
      return '';
    } catch (error) {
      return (error as Error).message;
    }
  };
  const lines = told()
    .split('\n')
    .filter((line) => line.startsWith('piece.yaml'));
  expect(lines).toEqual([
    expect.stringContaining("line 5, column 58: board 'post' knows no 'wdie': did you mean 'wide'?"),
    expect.stringContaining(
      "line 7, column 68: there is no board 'piec' above this line: did you mean 'piece'?",
    ),
  ]);
});

test('a name that begins with a side word swaps it, and side words stand in any order', () => {
  const boards = `  front panel: { grain: left-right, face: front, front: piece, thick: 20, like: piece, mirrored: front-back }
  leg: { grain: up, face: front, left: piece, front: 30 short of piece, wide: 40, thick: 40, like: piece, mirrored: left-right and front-back }
  rail: { grain: left-right, face: front, between: left front leg and front right legs, middle: left front leg, top: piece, wide: 60, thick: 20 }`;
  expect(builtPiece(file(boards)).boards.map(({ board }) => board.name)).toEqual([
    'front panel',
    'back panel',
    'front left leg',
    'back left leg',
    'front right leg',
    'back right leg',
    'rail',
  ]);
});

test('three legs stand evenly round a middle', () => {
  const design = builtPiece(shippedPiece('plant-stand'));
  const feet = design.boards.slice(1).map(({ place: { x } }) => (Math.atan2(x[1], x[0]) * 180) / Math.PI);
  const apart = feet.map((angle, i) => (feet[(i + 1) % 3]! - angle + 360) % 360);
  for (const angle of apart) expect(angle).toBeCloseTo(120, 9);
});

test('the same piece told in inches gives the same solids', async () => {
  const mm = `design: shed-thing\nwood: white ash\npiece: [508, 304.8, 609.6]\nboards:\n  side: { grain: up, face: left, left: 12.7 short of piece, thick: 19.05, like: piece, mirrored: left-right }\n  shelf: { grain: left-right, face: up, between: left side and right side, bottom: 254 above floor, thick: 19.05, like: side }\njoints:\n  shelf to side: { inset: 25.4 }\n`;
  const inches = `design: shed-thing\nwood: white ash\nunits: in\npiece: [20, 12, 2 × 12]\nboards:\n  side: { grain: up, face: left, left: 1/2 short of piece, thick: 3/4, like: piece, mirrored: left-right }\n  shelf: { grain: left-right, face: up, between: left side and right side, bottom: 10" above floor, thick: 19.05 mm, like: side }\njoints:\n  shelf to side: { inset: 1 }\n`;
  const [one, other] = [builtPiece(mm), builtPiece(inches)];
  expect(await boxesOf(other)).toEqual(await boxesOf(one));
  expect(
    other.joints.map(({ tenons }) =>
      tenons.map(({ width, length }) => [width.toFixed(6), length.toFixed(6)]),
    ),
  ).toEqual(
    one.joints.map(({ tenons }) => tenons.map(({ width, length }) => [width.toFixed(6), length.toFixed(6)])),
  );
});

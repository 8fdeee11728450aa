import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import { sawAngles } from '../../src/board/index.js';
import { box, meshOf, volume } from '../../src/solid/index.js';
import { onSolids } from '../checks/sample-design.js';
import { boardByJscad, jscadVolume } from '../outside/board-by-jscad.js';
import { builtPiece } from './built-piece.js';

/** A file with these boards in a box 600 × 300 × 500. */
const withBoards = (boards: string, rest = ''): string =>
  `design: shed-thing\nwood: white ash\npiece: [600, 300, 500]\nboards:\n${boards}\n${rest}`;

/** The boxes round the boards of a design, as the kernel has them; mm, to 1e-4. */
async function boxes(design: Design): Promise<Readonly<Record<string, readonly number[]>>> {
  return onSolids(design, (solids) =>
    Object.fromEntries(
      [...solids.boards].map(([id, { body }]) => {
        const { min, max } = box(body);
        return [id, [...min, ...max].map((part) => Math.round(part * 1e4) / 1e4 + 0)];
      }),
    ),
  );
}

describe('a board stands where the words say', () => {
  test.each([
    ['left: piece, thick: 20, like: piece', [0, 0, 0, 20, 300, 500]],
    [
      'left: 30 short of piece, thick: 20, front: 10 short of back of piece, back: piece, like: piece',
      [30, 290, 0, 50, 300, 500],
    ],
    ['right: 5 past right of piece, thick: 20, like: piece', [585, 0, 0, 605, 300, 500]],
    ['middle: middle of piece, thick: 20, wide: 100, long: 400', [290, 100, 50, 310, 200, 450]],
    [
      'middle: [60 short of left of piece, middle of piece], thick: 20, wide: 100, bottom: 40 above floor, top: 60 below top of piece',
      [50, 100, 40, 70, 200, 440],
    ],
    ['left: piece, right: 20 past left of piece', undefined],
  ])('%s', async (told, expected) => {
    const text = withBoards(`  side: { grain: up, face: left, ${told} }`);
    if (expected === undefined)
      expect(() => builtPiece(text)).toThrow(/nothing says where board 'side' stands front-back/);
    else expect(await boxes(builtPiece(text))).toEqual({ side: expected });
  });

  test('mirrored both ways there are four, each named by where it stands', async () => {
    const leg =
      'leg: { grain: up, face: front, left: 30 short of piece, front: 40 short of piece, wide: 50, thick: 60, bottom: floor, top: piece, mirrored: left-right and front-back }';
    expect(await boxes(builtPiece(withBoards(`  ${leg}`)))).toEqual({
      'front-left-leg': [30, 40, 0, 80, 100, 500],
      'back-left-leg': [30, 200, 0, 80, 260, 500],
      'front-right-leg': [520, 40, 0, 570, 100, 500],
      'back-right-leg': [520, 200, 0, 570, 260, 500],
    });
  });

  test('a mirror image is the same wood seen in a mirror, whatever is cut into it, measured from its lower edge as well', async () => {
    const rail = `  rail:
    grain: left-right
    face: front
    front: 30 short of piece
    thick: 24
    left: 40 short of piece
    right: 90 short of piece
    bottom: 200 above floor
    wide: 80
    notch: { corner: left bottom, long: 40, deep: 20 }
    bevel: { corner: right top, long: 50, deep: 30 }
    groove: { side: top, wide: 6, deep: 8, from: 7 short of front, stops: { left: 60 } }
    holes: { side: front, wide: 5, deep: 10, middle: [100 short of right, 20 below top] }
    opening: { long: 60, wide: 20, middle: [200 short of left] }
    mirrored: front-back`;
    const design = builtPiece(withBoards(rail));
    for (const { place } of design.boards) expect(place.y[2]).toBeCloseTo(1, 12);
    const corners = await onSolids(design, ({ boards }) =>
      design.boards.map(({ board }) => {
        const { positions } = meshOf(boards.get(board.id)!.body);
        return Array.from({ length: positions.length / 3 }, (_, i) => [...positions.slice(3 * i, 3 * i + 3)]);
      }),
    );
    const said = (points: readonly (readonly number[])[]) =>
      points.map((p) => p.map((part) => part.toFixed(3)).join(' ')).toSorted();
    const [told, image] = corners;
    expect(said(image!)).toEqual(said(told!.map(([x, y, z]) => [x!, 300 - y!, z!])));
  });

  test('copies are spread with equal gaps, and a formula may count them', async () => {
    const boards = `  side: { grain: up, face: right, left: piece, thick: 20, like: piece, mirrored: left-right }
  shelf: { grain: left-right, face: up, between: left side and right side, evenly: between floor and top of piece, thick: 20, front: 10 × n short of piece, back: piece, repeat: 3 }`;
    const found = await boxes(builtPiece(withBoards(boards)));
    // (500 − 3 × 20) / 4 = 110 between them
    expect(found['shelf-1']).toEqual([20, 10, 110, 580, 300, 130]);
    expect(found['shelf-3']).toEqual([20, 30, 370, 580, 300, 390]);
  });

  const block =
    '  block: { grain: up, face: front, middle: [60 short of front of piece, middle of piece], wide: 40, thick: 30, bottom: 40 × n above floor, long: 100';

  test('copies round a middle may be counted too: each stands at its own height', async () => {
    const found = await boxes(
      builtPiece(withBoards(`${block}, around: { middle: middle of piece, copies: 3, first: front } }`)),
    );
    expect(['block-1', 'block-2', 'block-3'].map((name) => [found[name]![2], found[name]![5]])).toEqual([
      [40, 140],
      [80, 180],
      [120, 220],
    ]);
  });

  test('without copies there is nothing to count, and the remedy says what makes them', async () => {
    expect(() => builtPiece(withBoards(`${block} }`))).toThrow(
      /nothing is called 'n': n counts copies: write repeat or around too/,
    );
    const found = await boxes(builtPiece(withBoards(`${block}, repeat: 1 }`)));
    expect(found['block-1']![2]).toBe(40);
  });
});

/** A splayed box, sides leaning s from plumb: mitre sin s · tan 45°, blade tilt cos s · sin 45°; standard compound-angle formulas. */
test.each([
  { splay: 10, mitre: 9.8511, tilt: 44.136 },
  { splay: 30, mitre: 26.5651, tilt: 37.7612 },
  { splay: 0, mitre: 0, tilt: 45 },
])(
  'sides that splay $splay° and are mitred are sawn at $mitre° with the blade at $tilt°, and touch all along',
  async ({ splay, mitre, tilt }) => {
    const side = `wide: 150, thick: 20, bottom: floor`;
    const design = builtPiece(
      withBoards(
        `  front: { grain: left-right, face: front, front: piece, left: piece, right: piece, ${side}, slopes: { front: ${splay}° }, mirrored: front-back }
  side: { grain: front-back, face: left, left: piece, front: piece, back: piece, ${side}, slopes: { left: ${splay}° }, mirrored: left-right }`,
        // told in two lines, and every end has a name of its own all the same
        `joints:\n  front to side: { mitred: yes, tenons: 1 }\n  back to side: { mitred: yes, tenons: 1 }`,
      ),
    );
    expect(design.boards).toHaveLength(4);
    for (const { board } of design.boards) {
      expect(new Set(board.bevels.map(({ id }) => id)).size).toBe(2);
      for (const { normal } of board.bevels) {
        const { mitreDeg, bevelDeg } = sawAngles(normal);
        expect(Math.abs(mitreDeg)).toBeCloseTo(mitre, 3);
        expect(Math.abs(bevelDeg)).toBeCloseTo(tilt, 3);
      }
    }
    // its corner edges are w·√(1 + sin² s) long and √2·t / √(1 + sin² s) apart: the same area at any splay
    expect(design.joints).toHaveLength(4);
    for (const { contactAreaMm2 } of design.joints)
      expect(contactAreaMm2).toBeCloseTo(Math.SQRT2 * 150 * 20, 3);
    await onSolids(design, (solids) => {
      for (const { board } of design.boards) {
        const ours = volume(solids.boards.get(board.id)!.body);
        expect(Math.abs(ours / jscadVolume(boardByJscad(board)) - 1)).toBeLessThan(1e-6);
      }
    });
  },
);

/**
 * Square stock with the front face along the splay axis on the saw table: mitre atan(tan b · cos a), blade tilted by a; derived in public
 * write-ups (blackdogswoodshop.blogspot.com 2020/02; tinyshopww.blogspot.com 2020/05).
 */
test.each([
  { rake: 5, splay: 5, front: 4.9811, length: 453.431 },
  { rake: 10, splay: 10, front: 9.8511, length: 463.78 },
  { rake: 8, splay: 12, front: 11.8866, length: 464.38 },
  { rake: 15, splay: 22, front: 21.3187, length: 500.094 },
])(
  'a leg told to lean $rake° and $splay° is sawn at the published angles',
  async ({ rake, splay, front, length }) => {
    const design = builtPiece(
      withBoards(
        `  leg: { grain: up, face: front, wide: 40, thick: 40, middle: middle of piece, top: 450 above floor, bottom: floor, leans: { left: ${splay}°, front: ${rake}° } }`,
      ),
    );
    const { board } = design.boards[0]!;
    expect(board.bevels).toHaveLength(2);
    for (const { normal } of board.bevels) {
      const { mitreDeg, bevelDeg } = sawAngles(normal);
      expect(Math.abs(mitreDeg - front)).toBeLessThan(5.1e-5);
      expect(bevelDeg).toBeCloseTo(rake, 9);
    }
    // along its middle line, from level to level
    const { up, low } = { up: 450, low: 0 };
    const run =
      Math.hypot(Math.tan((rake * Math.PI) / 180), Math.tan((splay * Math.PI) / 180), 1) * (up - low);
    expect(run).toBeCloseTo(length, 2);
    await onSolids(design, (solids) => {
      const { min, max } = box(solids.boards.get('leg')!.body);
      expect(min[2]).toBeCloseTo(0, 6);
      expect(max[2]).toBeCloseTo(450, 6);
      // the foot stands out to the left and to the front
      expect(min[0]).toBeLessThan(300 - 450 * Math.tan((splay * Math.PI) / 180));
      expect(min[1]).toBeLessThan(150 - 450 * Math.tan((rake * Math.PI) / 180));
    });
  },
);

import { expect, test } from 'vitest';
import { assemble } from '../../src/assembly/index.js';
import { type Board, makeBoard, withGroove } from '../../src/board/index.js';
import { cross, dot, scale, type Vec3, WORLD } from '../../src/frame/index.js';
import {
  builtInShop,
  type GrooveCard,
  grooveCards,
  grooveFeedWords,
  type Shop,
} from '../../src/shop/index.js';
import { boardBody, box, hit, startKernel, stockBody } from '../../src/solid/index.js';
import { panelledDoor } from '../designs/panelled-door.js';

const bare = makeBoard({ id: 'rail', blank: { length: 600, width: 70, thickness: 22 } });
const alone = (board: Board) =>
  assemble({ name: 'one', title: 'One', cutter: 6, boards: [{ board, place: WORLD }] });
const cards = (board: Board, shop: Shop = builtInShop('mm')): readonly GrooveCard[] =>
  grooveCards(alone(board), shop);

const ENDS: Readonly<Record<string, Vec3>> = {
  'reference-end': [-1, 0, 0],
  'opposite-end': [1, 0, 0],
  'reference-edge': [0, -1, 0],
  'opposite-edge': [0, 1, 0],
  'reference-face': [0, 0, -1],
  'opposite-face': [0, 0, 1],
};

test.each([
  ['reference-edge', 'reference-face'],
  ['reference-edge', 'opposite-face'],
  ['opposite-edge', 'reference-face'],
  ['opposite-face', 'reference-edge'],
  ['opposite-face', 'opposite-edge'],
  ['reference-face', 'opposite-edge'],
  ['opposite-face', 'reference-end'],
  ['reference-end', 'opposite-face'],
] as const)('fed as the card says, the cut in the %s pulls the fence against the %s', (face, from) => {
  const board = withGroove(bare, { face, from, distance: 7, width: 6, depth: 8 });
  const [cut] = cards(board)[0]!.cuts;
  const [, first, last] = /^from the (.+) to the (.+)$/.exec(grooveFeedWords(board, cut!))!;
  const [start, end] = [first!, last!].map((name) => ENDS[name.replace(' ', '-')]!);
  expect(start).toEqual(scale(end!, -1).map((part) => part + 0));
  // a tooth ahead of the axis moves with the turn of the cutter, clockwise seen from the router; the wood pushes back
  const outOfWood = ENDS[face]!;
  const tooth = cross(scale(outOfWood, -1), end!);
  const push = scale(tooth, -1);
  // the fence hangs outside the face it follows: it is closed by a push into the board
  expect(dot(push, ENDS[from]!)).toBeCloseTo(-1, 9);
});

test('the card cuts the groove the design asks for: replayed from its figures alone, on the solids', async () => {
  const kernel = await startKernel();
  for (const { board } of panelledDoor().boards) {
    const stock = stockBody(kernel, board);
    const own = boardBody(kernel, { ...board, mortises: [] }, stock);
    for (const card of grooveCards(panelledDoor(), builtInShop('mm'))) {
      for (const cut of card.cuts.filter((one) => one.board === board.id)) {
        const left = ENDS[cut.leftEnd]!;
        const [into, out] = [ENDS[cut.face]!, ENDS[cut.from]!].map((n) => scale(n, -1)) as [Vec3, Vec3];
        const size: Vec3 = [board.blank.length, board.blank.width, board.blank.thickness];
        // the corner where the face, the fence's face and the left end meet
        const corner = [0, 1, 2].map((i) =>
          [into, out, scale(left, -1)].some((d) => d[i]! < -0.5) ? size[i]! : 0,
        ) as unknown as Vec3;
        const whole = Math.abs(dot(left, size));
        const from = cut.stopLeft ?? 0;
        const to = whole - (cut.stopRight ?? 0);
        const at = (along: number, off: number, deep: number): Vec3 =>
          [0, 1, 2].map(
            (i) => corner[i]! - left[i]! * along + out[i]! * off + into[i]! * deep,
          ) as unknown as Vec3;
        const half = card.cutter / 2;
        for (const axis of card.fence) {
          for (const along of [from + half + 0.1, (from + to) / 2, to - half - 0.1]) {
            // air down the axis to the depth, wood below
            const floor = hit(own, at(along, axis, -1), at(along, axis, card.depth + 5));
            expect(floor! - 1, `${card.id} ${cut.board}`).toBeCloseTo(card.depth, 2);
          }
        }
        // past a stop there is wood
        if (cut.stopLeft !== undefined)
          expect(hit(own, at(from - 0.5, card.fence[0]!, -1), at(from - 0.5, card.fence[0]!, 5))).toBeCloseTo(
            1,
            2,
          );
        const walls = [card.fence[0]! - half, card.fence.at(-1)! + half];
        expect(walls[1]! - walls[0]!).toBeCloseTo(card.width, 9);
      }
    }
    expect(box(own)).toEqual(box(stock));
    stock.delete();
    own.delete();
  }
  kernel.dispose();
});

test('a groove wider than any cutter is cut side by side, each cut half a cutter at most', () => {
  const [card] = cards(
    withGroove(bare, { face: 'opposite-face', from: 'reference-edge', distance: 10, width: 20, depth: 9 }),
  );
  expect(card!.cutter).toBe(12);
  expect(card!.fence).toEqual([16, 20, 24]);
  expect(card!.passes.at(-1)!.depth).toBe(9);
});

test('a stopped groove of a width no cutter has cannot be cut, a through one can', () => {
  const verdict = (stop: { start?: number }) =>
    cards(
      withGroove(bare, {
        face: 'opposite-face',
        from: 'reference-edge',
        distance: 10,
        width: 7,
        depth: 6,
        stop,
      }),
    )[0]!.figures.find(({ name }) => name === 'cutter for the groove')!.verdict;
  expect(verdict({ start: 50 })).toBe('failed');
  expect(verdict({})).toBe('passed');
});

test('grooves of one setting share a card; across the grain is cut before along it', () => {
  const door = grooveCards(panelledDoor(), builtInShop('mm'));
  expect(door.map(({ kind, cuts }) => [kind, cuts.length])).toEqual([
    ['groove', 2],
    ['groove', 2],
    ['rebate', 4],
  ]);
  expect(door[2]!.cuts.map(({ groove }) => groove)).toEqual(['lower', 'upper', 'left', 'right']);
});

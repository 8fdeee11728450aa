import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import { type Board, makeBoard, stockVolume } from '../../src/board/index.js';
import { WORLD } from '../../src/frame/index.js';
import { INCH } from '../../src/length/index.js';
import {
  boardFeet,
  boardMarks,
  type CutListRequest,
  cutList,
  cutToFit,
  cutWords,
  hardwareList,
  type SetupCard,
  testBlanks,
  woodBill,
} from '../../src/shop/index.js';
import { aShop, without } from './a-shop.js';
import { plainJig, stoolWith } from './designs.js';

const designOf = (boards: readonly Board[]): Design => ({
  ...stoolWith(),
  boards: boards.map((board) => ({ board, place: WORLD })),
  joints: [],
});

const request = (design: Design, more: Partial<CutListRequest> = {}): CutListRequest => ({
  design,
  shop: aShop,
  volumes: new Map(design.boards.map(({ board }) => [board.id, stockVolume(board).volume])),
  ...more,
});

const legs = (count: number): readonly Board[] =>
  Array.from({ length: count }, (_, i) =>
    makeBoard({
      id: `leg-${i + 1}`,
      blank: { length: 10 * INCH, width: 1.75 * INCH, thickness: 1.75 * INCH },
    }),
  );

describe('four legs 1-3/4 × 1-3/4 × 10 in', () => {
  const rows = cutList(request(designOf(legs(4))));

  test('are one line of the list, each with its own mark', () => {
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ count: 4, marks: ['LE-1', 'LE-2', 'LE-3', 'LE-4'], handed: false });
  });

  test('are 0.85 board feet net: 4 · 1.75 · 1.75 · 10 / 144', () => {
    const [net] = woodBill(rows)[0]!.items;
    expect(net!.what).toBe('boards, finished blanks');
    expect(net!.boardFeet).toBeCloseTo((4 * 1.75 * 1.75 * 10) / 144, 9);
    expect(net!.boardFeet).toBeCloseTo(0.85, 2);
    expect(net!.m3).toBeCloseTo(4 * 0.04445 ** 2 * 0.254, 12);
  });

  test('a board foot is 144 cubic inches, 2359.7 cm³', () => {
    expect(boardFeet(12 * 12 * INCH ** 3)).toBe(1);
    expect(boardFeet(2359737.216)).toBeCloseTo(1, 9);
  });
});

describe('a list worked by hand: two rails 300 × 60 × 20 and a top 500 × 200 × 25, +30, +8, +4 mm', () => {
  const boards = [
    makeBoard({ id: 'front-rail', blank: { length: 300, width: 60, thickness: 20 } }),
    makeBoard({ id: 'back-rail', blank: { length: 300, width: 60, thickness: 20 } }),
    makeBoard({ id: 'top', blank: { length: 500, width: 200, thickness: 25 } }),
  ];
  const rows = cutToFit(
    cutList(request(designOf(boards), { horns: new Map([['back-rail', 50]]) })),
    new Map([['top', 7]]),
  );
  const [bill] = woodBill(rows, [], 0.2);

  test('rough sizes are the finished ones with each allowance and the horn', () => {
    expect(rows.map(({ rough }) => rough!.size)).toEqual([
      { length: 380, width: 68, thickness: 24 },
      { length: 530, width: 208, thickness: 29 },
    ]);
  });

  test('the items of the wood to buy add up to the rough volumes and a fifth more', () => {
    const rough = 2 * 380 * 68 * 24 + 530 * 208 * 29;
    expect(rough).toBe(4437280);
    const volumes = new Map(bill!.items.map(({ what, volumeMm3 }) => [what, volumeMm3]));
    expect(volumes.get('boards, finished blanks')).toBeCloseTo(2 * 360000 + 2500000, 6);
    expect(volumes.get('horns')).toBeCloseTo(2 * 50 * 60 * 20, 6);
    expect(volumes.get('allowance on length')).toBeCloseTo(2 * 30 * 60 * 20 + 30 * 200 * 25, 6);
    expect(volumes.get('allowance on width')).toBeCloseTo(2 * 380 * 8 * 20 + 530 * 8 * 25, 6);
    expect(volumes.get('allowance on thickness')).toBeCloseTo(2 * 380 * 68 * 4 + 530 * 208 * 4, 6);
    const sum = bill!.items.reduce((all, { volumeMm3 }) => all + volumeMm3, 0);
    expect(sum).toBeCloseTo(rough * 1.2, 5);
    expect(bill!.total.volumeMm3).toBeCloseTo(rough * 1.2, 5);
    expect(bill!.total.boardFeet).toBeCloseTo((rough * 1.2) / 2359737.216, 9);
  });

  test('a board that is fitted to the work says after which step, the others are cut now', () => {
    expect(rows.map(({ cut }) => cutWords(cut))).toEqual(['cut now', 'cut to fit after step 7']);
  });

  test('each board weighs its volume times 672 kg/m³ (white ash, Wood Handbook)', () => {
    expect(rows[0]!.massKg).toBeCloseTo(0.3 * 0.06 * 0.02 * 672, 9);
  });
});

test('a shop without rough allowances gives finished sizes only, and the wood to buy is not verified', () => {
  const rows = cutList(request(designOf(legs(1)), { shop: without('roughAllowance') }));
  expect(rows[0]!.rough).toBeUndefined();
  expect(woodBill(rows)[0]!.verdict).toBe('not verified');
});

test('sheet goods are cut to size and are no part of the wood to buy', () => {
  const rows = cutList(request(plainJig()));
  expect(rows.find(({ material }) => material === 'birch plywood')!.rough!.allowances).toEqual([]);
  expect(woodBill(rows).map(({ material }) => material)).toEqual(['white ash']);
});

test('aids and test blanks come from scrap: they stand on the list, and none of them is bought', () => {
  const design = designOf(legs(4));
  const aid = {
    board: makeBoard({ id: 'depth-block', blank: { length: 80, width: 40, thickness: 14 } }),
    kind: 'depth block',
    purpose: 'depth block',
    count: 3,
    handed: false,
  } as const;
  const rows = cutList(request(design, { aids: [aid] }));
  expect(rows.map(({ kind, count, scrap }) => [kind, count, scrap])).toEqual([
    ['board', 4, false],
    ['aid', 3, true],
  ]);
  const bought = (of: readonly (typeof rows)[number][]) => woodBill(of).map(({ total }) => total.volumeMm3);
  expect(bought(rows)).toEqual(bought(cutList(request(design))));
});

test('boards that are mirror images stand on two lines that name each other', () => {
  const rows = cutList(request(stoolWith({ treads: 2 })));
  const sides = rows.filter(({ boards }) => boards.some((id) => id.endsWith('-side')));
  expect(sides.map(({ boards, count, mirrorOf }) => [boards, count, mirrorOf])).toEqual([
    [['left-side'], 1, 'right-side'],
    [['right-side'], 1, 'left-side'],
  ]);
});

test('every mark is unique, whatever the boards are called', () => {
  const ids = ['top-rail', 'toe-rail', 'tread', 'leg-1', 'leg-2', 'left', 'lower-tread', 'long-tenon'];
  const marks = [...boardMarks(ids).values()];
  expect(new Set(marks).size).toBe(ids.length);
  expect(marks.slice(0, 5)).toEqual(['TR-1', 'TR-2', 'TR-3', 'LE-1', 'LE-2']);
});

test('hardware of one name is one line with its count, and what the person owns is not bought', () => {
  const jig = plainJig();
  const rows = hardwareList(jig);
  expect(rows.map(({ count }) => count)).toEqual([4, 4, 4, 4]);
  const ids = rows.flatMap((row) => row.ids);
  expect(ids.toSorted()).toEqual(jig.hardware.flatMap(({ id, bought }) => (bought ? [id] : [])).toSorted());
  expect(ids.length).toBeLessThan(jig.hardware.length);
});

describe('test blanks', () => {
  const boards = stoolWith().boards.map(({ board }) => board);
  const card = (id: string, cuts: readonly string[], angled: boolean): SetupCard =>
    ({
      id,
      mortiseLength: 91,
      cuts: cuts.map((board) => ({ board })),
      nearRail: { distance: 14, wedge: angled ? { aid: 'wedge', angleDeg: 10 } : undefined },
      farRail: undefined,
      testCut: { sawnFirst: angled ? ['the end'] : [] },
    }) as unknown as SetupCard;

  test('serve every set-up of their section: a test cut each and two where a wedge is used, one after the other', () => {
    const blanks = testBlanks(
      [
        card('S1', ['left-side', 'right-side'], true),
        card('S2', ['stretcher'], false),
        card('S3', ['left-side', 'stretcher'], false),
      ],
      boards,
      aShop,
    );
    // three test cuts of 91 + 30 in one length, 30 beyond the last
    expect(
      blanks.map(({ thickness, count, cuts, length, setups }) => [thickness, count, cuts, length, setups]),
    ).toEqual([
      [28, 1, 3, 3 * 121 + 30, ['S1', 'S3']],
      [24, 1, 2, 300, ['S2', 'S3']],
    ]);
  });

  test('are as wide as the mortise wants, or as the board where rails bear on its edges', () => {
    const wide = boards.find(({ id }) => id === 'left-side')!.blank.width;
    const { cuts, ...rest } = card('S1', ['left-side'], false);
    const held = { ...rest, cuts: cuts.map((cut) => ({ ...cut, nearFace: 'reference-edge' })) };
    const [[free], [gripped]] = [
      testBlanks([{ ...rest, cuts }], boards, aShop),
      testBlanks([held], boards, aShop),
    ];
    expect(free!.width).toBe(91 + 30);
    expect(gripped!.width).toBe(wide);
    // a stretcher narrower than that keeps its own width
    expect(testBlanks([card('S2', ['stretcher'], false)], boards, aShop)[0]!.width).toBe(70);
  });

  test('are never shorter than the saw may cut', () => {
    const [short] = testBlanks([card('S1', ['stretcher'], false)], boards, {
      ...aShop,
      shortest: { saw: 380 },
    });
    expect(short!.length).toBe(380);
  });

  test('become lines of the cut list', () => {
    const blanks = testBlanks([card('S1', ['stretcher'], false)], boards, aShop);
    const rows = cutList(request(stoolWith(), { testBlanks: blanks }));
    expect(rows.at(-1)).toMatchObject({ kind: 'test blank', count: 1, marks: ['X1'] });
    expect(rows.at(-1)!.rough!.size.length).toBe(300);
  });
});

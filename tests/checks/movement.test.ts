import { describe, expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import jigModel from '../../models/jig.js';
import stoolModel from '../../models/stool.js';
import { assemble, type Design, type PlacedBoard } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { findingsOf } from '../../src/checks/index.js';
import { frame, type Vec3 } from '../../src/frame/index.js';
import type { JoinOptions } from '../../src/joinery/index.js';
import { speaker } from '../../src/length/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { seasonIn, USUAL_SEASON } from '../../src/movement/index.js';
import { builtInShop, jigOfShop, toolsOf } from '../../src/shop/index.js';
import { moving } from '../../src/strength/index.js';
import { climate } from '../../src/tables/index.js';
import { curesOf, type Question, verdictOf } from '../../src/verdict/index.js';
import { smallTable } from '../designs/small-table.js';

const found = (design: Design, season = USUAL_SEASON) =>
  findingsOf(moving(design, season).margins, speaker('mm'));
const codes = (design: Design, season = USUAL_SEASON) =>
  [...new Set(found(design, season).map(({ code, level }) => `${level} ${code}`))].toSorted();

const board = (
  id: string,
  [length, width, thickness]: Vec3,
  [origin, z, x]: readonly [Vec3, Vec3, Vec3],
  material = 'northern red oak',
): PlacedBoard => ({
  board: makeBoard({ id, material, blank: { length, width, thickness } }),
  place: frame(origin, z, x),
});

/** A lid of red oak 300 deep, its grain to the right, with a batten under it whose grain runs from front to back. */
const battened = (options: JoinOptions = {}, material = 'northern red oak', turned = false): Design =>
  assemble({
    name: 'lid',
    title: 'Lid',
    cutter: 8,
    boards: [
      board(
        'lid',
        turned ? [300, 400, 20] : [400, 300, 20],
        turned
          ? [
              [400, 0, 30],
              [0, 0, 1],
              [0, 1, 0],
            ]
          : [
              [0, 0, 30],
              [0, 0, 1],
              [1, 0, 0],
            ],
        material,
      ),
      board(
        'batten',
        [260, 40, 30],
        [
          [220, 20, 0],
          [0, 0, 1],
          [0, 1, 0],
        ],
      ),
    ],
    joints: [
      { a: 'batten', b: 'lid', options: { cutter: 8, tenonWidth: 30, places: [-100, 100], ...options } },
    ],
  });

describe('glue across the grain', () => {
  test('tenons 200 apart hold 222 mm of a lid: an error with what it would move, and red oak cracks on the way', () => {
    const width = 200 + 30 - 7.8;
    const { margins } = moving(battened(), USUAL_SEASON);
    const [held, moves, dries] = margins.filter(({ code }) => code.startsWith('held'));
    expect(held).toMatchObject({ code: 'held-across-grain', subjects: ['lid', 'batten'], error: 150 });
    expect(held!.figure).toBeCloseTo(width, 6);
    // 3 points from the middle of the climate to its driest
    expect(moves!.figure).toBeCloseTo(width * 0.00369 * 3, 6);
    expect(dries).toMatchObject({ code: 'held-cracks', figure: 3 });
    expect(dries!.warning).toBeCloseTo(1.32 / 0.65, 1);
    expect(codes(battened())).toEqual(['error held-across-grain', 'warning held-cracks']);
  });

  test('nearer together it is a warning and then nothing; along the grain, or in plywood, nothing is held', () => {
    expect(codes(battened({ places: [-40, 40] }))).toContain('warning held-across-grain');
    expect(codes(battened({ places: [-20, 20] }))).toEqual([]);
    expect(codes(battened({}, 'birch plywood'))).toEqual([]);
    expect(codes(battened({}, 'northern red oak', true))).toEqual([]);
  });

  test('a top glued on two legs that an apron keeps apart is held over the whole way between them', () => {
    const leg = (id: string, y: number) =>
      board(
        id,
        [300, 40, 40],
        [
          [0, y, 0],
          [1, 0, 0],
          [0, 0, 1],
        ],
      );
    const boards = [
      leg('front-leg', 40),
      leg('back-leg', 260),
      board(
        'apron',
        [180, 60, 20],
        [
          [10, 40, 230],
          [1, 0, 0],
          [0, 1, 0],
        ],
      ),
      board(
        'top',
        [200, 300, 22],
        [
          [-20, -20, 300],
          [0, 0, 1],
          [1, 0, 0],
        ],
      ),
    ];
    const options = { cutter: 8, endInset: 5 };
    const table = (top: boolean) =>
      assemble({
        name: 'stand',
        title: 'Stand',
        cutter: 8,
        boards,
        joints: [
          { a: 'apron', b: 'front-leg', options },
          { a: 'apron', b: 'back-leg', options },
          ...(top
            ? ['front-leg', 'back-leg'].map((b) => ({
                a: b,
                b: 'top',
                options: { ...options, along: 'top' },
              }))
            : []),
        ],
      });
    const held = found(table(true)).filter(({ code }) => code === 'held-across-grain');
    expect(held).toMatchObject([{ level: 'error', subjects: ['top', 'apron', 'back-leg', 'front-leg'] }]);
    // the legs move with the top over their own width: what is left is the length of the apron
    expect(held[0]!.measured).toBeCloseTo(180, 6);
    expect(found(table(false)).filter(({ code }) => code === 'held-across-grain')).toEqual([]);
  });
});

describe('the fit through the seasons', () => {
  const own = (v: Record<string, unknown>, model: Model = stoolModel) =>
    model.build(readParameters(model, v, 'mm'), toolsOf(builtInShop('mm')));

  test('a tenon along the grain of a side swells by its whole width: 45 mm of ash, 3 points, 0.37 mm', () => {
    const stretcher = moving(own({ stretcherWidth: 70.9 }), USUAL_SEASON).margins.filter(
      ({ code, subjects }) => code === 'tenon-swells' && subjects[0] === 'stretcher/left-side',
    );
    const { tenons } = own({ stretcherWidth: 70.9 }).joints.find(({ id }) => id === 'stretcher/left-side')!;
    expect(stretcher).toMatchObject([{ figure: 1, governs: 'left side' }]);
    expect(stretcher[0]!.error).toBeCloseTo(tenons[0]!.width * 0.00274 * 3, 9);
    expect(codes(own({ edgeClearance: '0.2' }))).toContain('error tenon-swells');
    expect(codes(own({ endGap: '0.02' }))).toContain('error tenon-meets-bottom');
  });

  test('between tread and side, whose widths run one way, a tenon has nothing to fear', () => {
    const swells = moving(own({}), USUAL_SEASON).margins.filter(({ code }) => code === 'tenon-swells');
    expect(swells.map(({ subjects }) => subjects[0])).toEqual([
      'stretcher/left-side',
      'stretcher/right-side',
    ]);
  });

  test('quarter-sawn wood moves less, a damp shed more', () => {
    const moves = (season = USUAL_SEASON) =>
      moving(own({}), season).margins.find(({ what }) => what.startsWith('what tread moves'))!.figure;
    expect(moves()).toBeCloseTo(240 * 0.00274 * 6, 9);
    expect(moves(seasonIn(climate('heated-room'), 'quarter'))).toBeCloseTo(240 * 0.00169 * 6, 9);
    expect(moves(seasonIn(climate('unheated-shed')))).toBeGreaterThan(moves());
    expect(codes(own({}), seasonIn(climate('heated-room'), 'flat', 14))).toContain(
      'warning glued-out-of-place',
    );
  });

  test('buttons and screws whose travel is less than the top moves are found', () => {
    expect(codes(smallTable())).toEqual([]);
    expect(codes(smallTable({ by: 'slots', asked: { travel: 1 } }))).toContain('error no-room-to-move');
    expect(codes(smallTable(), seasonIn(climate('unheated-shed')))).toContain('error no-room-to-move');
  });

  test('the models as they come, and both treads, have nothing to say', () => {
    for (const [model, values] of [
      [stoolModel, {}],
      [stoolModel, { treads: 2 }],
      [frameModel, {}],
      [jigModel, {}],
    ] as const)
      expect(codes(own(values, model as Model)), JSON.stringify(values)).toEqual([]);
  });

  test('too little slack, and rails held too wide, are found with a cure that works', async () => {
    const shop = builtInShop('mm');
    const question: Question = { model: stoolModel, shop, jig: jigOfShop(shop, jigModel, 'mm'), units: 'mm' };
    for (const [model, given, code] of [
      [stoolModel, { edgeClearance: 0.2 }, 'tenon-swells'],
      [frameModel, { railWidth: 190, tenons: 3 }, 'held-across-grain'],
    ] as const) {
      const values = { ...readParameters(model as Model, {}, 'mm'), ...given };
      const asked = { ...question, model: model as Model };
      const { findings } = await verdictOf(asked, values);
      expect(findings.filter(({ level }) => level === 'error').map((one) => one.code)).toContain(code);
      const cures = await curesOf(asked, values, findings, Object.keys(given));
      const [, cure] = [...cures].find(([key]) => key.startsWith(code))!;
      const after = await verdictOf(asked, { ...values, [cure.parameter]: cure.value });
      expect(after.findings.filter(({ level }) => level === 'error')).toEqual([]);
    }
  });
});

import { expect, test } from 'vitest';
import { assemble } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { frame, WORLD } from '../../src/frame/index.js';
import type { JoinOptions } from '../../src/joinery/index.js';
import { seasonIn } from '../../src/movement/index.js';
import { passed } from '../../src/strength/index.js';
import { seasonFit } from '../../src/strength/season-fit.js';
import { climate } from '../../src/tables/index.js';

const ROOM = climate('heated-room');
const SHED = climate('unheated-shed');

/** A rail `wide` across, its end on the face of a leg: the grain of the leg runs along the mortise. */
function railInLeg(wide: number, options: JoinOptions = {}, material = 'American beech') {
  return assemble({
    name: 'gate',
    title: 'Gate',
    cutter: 10,
    boards: [
      {
        board: makeBoard({ id: 'leg', material, blank: { length: 400, width: 60, thickness: 45 } }),
        place: frame([0, 60, 0], [1, 0, 0], [0, 0, 1]),
      },
      {
        board: makeBoard({ id: 'rail', material, blank: { length: 300, width: wide, thickness: 30 } }),
        place: frame([45, 45, 100], [0, -1, 0], [1, 0, 0]),
      },
    ],
    joints: [{ a: 'rail', b: 'leg', options: { cutter: 10, tenons: 1, ...options } }],
  });
}

/** Flat-sawn American beech, 0.431 % for 1 % of moisture: Wood Handbook, FPL-GTR-190 (2010), Table 13–5. */
const BEECH = 0.00431;

test('a wide tenon gets what it swells and half a millimetre, on the half millimetre, and never less than one', () => {
  const rise = (ROOM.dampPercent - ROOM.dryPercent) / 2;
  for (const wide of [50, 80, 110, 150, 200]) {
    const { joints, boards } = railInLeg(wide);
    const [{ fit, tenons }] = joints as [(typeof joints)[0]];
    const [tenon] = tenons as [(typeof tenons)[0]];
    const needed = tenon.width * BEECH * rise + 0.5;
    expect(fit.edge).toBeGreaterThanOrEqual(Math.max(1, needed) - 1e-9);
    // and the next finer step would not do
    expect(fit.edge === 1 || fit.edge - 0.5 < needed + 0.5 * BEECH * rise).toBe(true);
    expect((2 * fit.edge) % 1).toBeCloseTo(0, 9);
    for (const { board } of boards) expect(board.mortises[0]!.length - tenon.width).toBeCloseTo(fit.edge, 9);
  }
  expect(railInLeg(50).joints[0]!.fit.edge).toBe(1);
  expect(railInLeg(200).joints[0]!.fit.edge).toBeGreaterThan(2);
});

test('an even place, a width that was asked for, a clearance that was given: each has its own', () => {
  const shed = seasonIn(SHED);
  const edge = (options: JoinOptions) => railInLeg(110, options).joints[0]!.fit.edge;
  expect(edge({ season: seasonIn(climate('even-room')) })).toBeLessThan(edge({}));
  expect(edge({ edgeClearance: 0.6 })).toBe(0.6);
  const { joints, boards } = railInLeg(110, { tenonWidth: 80 });
  expect(joints[0]!.tenons[0]!.width).toBe(80);
  expect(boards[0]!.board.mortises[0]!.length).toBe(80 + joints[0]!.fit.edge);
  // whatever the place, the check of the seasons has nothing to say of it
  for (const [season, wide] of [
    [shed, 110],
    [shed, 200],
    [seasonIn(ROOM), 200],
  ] as const) {
    const margins = seasonFit(railInLeg(wide, { season }), season).filter(
      ({ code }) => code === 'tenon-swells',
    );
    expect(margins).not.toEqual([]);
    expect(margins.filter((margin) => passed(margin))).toEqual([]);
  }
});

test('between boards that move as the tenon does, the usual millimetre is left', () => {
  const wide = { length: 300, width: 200, thickness: 30 };
  const shelf = makeBoard({ id: 'shelf', material: 'American beech', blank: wide });
  const upright = makeBoard({ id: 'upright', material: 'American beech', blank: wide });
  const { joints } = assemble({
    name: 'corner',
    title: 'Corner',
    cutter: 10,
    boards: [
      { board: upright, place: frame([0, 200, 0], [1, 0, 0], [0, 0, 1]) },
      { board: shelf, place: { ...WORLD, origin: [30, 0, 100] } },
    ],
    joints: [{ a: 'shelf', b: 'upright', options: { cutter: 10, tenons: 1 } }],
  });
  expect(joints[0]!.tenons[0]!.width).toBeGreaterThan(150);
  expect(joints[0]!.fit.edge).toBe(1);
});

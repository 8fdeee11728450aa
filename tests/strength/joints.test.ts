import { describe, expect, test } from 'vitest';
import frameModel from '../../models/frame.js';
import jigModel from '../../models/jig.js';
import stoolModel from '../../models/stool.js';
import { assemble, type Design, type PlacedBoard } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { frame, type Vec3 } from '../../src/frame/index.js';
import type { JoinOptions } from '../../src/joinery/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import { seasonIn, USUAL_SEASON } from '../../src/movement/index.js';
import { builtInShop, jigOfShop, toolsOf } from '../../src/shop/index.js';
import { fivePercent, GRAVITY, ROLLING_SHARE, VARIATION } from '../../src/statics/index.js';
import { framed } from '../../src/strength/framed.js';
import { glueShear } from '../../src/strength/glue.js';
import { type Margin, passed, stockIn, strengthOf, type Told } from '../../src/strength/index.js';
import { jointHold } from '../../src/strength/joint-holds.js';
import { FIRM, skeletonOf } from '../../src/strength/skeleton.js';
import { climate, species } from '../../src/tables/index.js';
import { type Question, verdictOf } from '../../src/verdict/index.js';

const OAK = 'northern red oak';

/** The 5 % value of red oak's shear along the grain, MPa. */
const SHEAR = fivePercent(species(OAK).shear, VARIATION.shear);

const board = (
  id: string,
  [length, width, thickness]: Vec3,
  [origin, z, x]: readonly [Vec3, Vec3, Vec3],
  material = OAK,
): PlacedBoard => ({
  board: makeBoard({ id, material, blank: { length, width, thickness } }),
  place: frame(origin, z, x),
});

const TENON: JoinOptions = {
  cutter: 10.1,
  tenons: 1,
  tenonWidth: 40,
  tenonThickness: 9.9,
  cheekClearance: 0.1,
  endGap: 1,
  endInset: 5,
};

/** What is asked of a joint otherwise, and how deep its mortises are, mm. */
interface Asked {
  readonly options?: JoinOptions;
  readonly inRail?: number;
  readonly inLegs?: number;
  readonly material?: string;
  /** Length of the rail, mm. */
  readonly between?: number;
}

/** Two legs 40 thick that stand 100 deep, and a rail 60 high between them, flush with their tops; a seat is on it. */
function gate({ options = {}, inRail = 26, inLegs = 26, material = OAK, between = 300 }: Asked = {}): Design {
  const leg = (id: string, x: number) =>
    board(
      id,
      [400, 100, 40],
      [
        [x, 100, 0],
        [1, 0, 0],
        [0, 0, 1],
      ],
      material,
    );
  return assemble({
    name: 'gate',
    title: 'Gate',
    cutter: 10.1,
    boards: [
      leg('left-leg', 0),
      leg('right-leg', between + 40),
      board(
        'rail',
        [between, 60, 30],
        [
          [40, 65, 340],
          [0, -1, 0],
          [1, 0, 0],
        ],
        material,
      ),
    ],
    joints: ['left-leg', 'right-leg'].map((b) => ({
      a: 'rail',
      b,
      options: { ...TENON, depths: { rail: inRail, [b]: inLegs }, ...options },
    })),
    uses: [{ board: 'rail', use: 'seat', face: 'opposite-edge' }],
    user: { kg: 110, child: false },
  });
}

/** Feet are found on the boards; where it rests on the floor is not asked of a solid here. */
const worked = (design: Design, told: Partial<Told> = {}) =>
  strengthOf(
    design,
    () => ({
      feet: [
        [0, 0],
        [1, 0],
        [0, 1],
      ],
      floor: 0,
      kg: 4,
      centre: [0, 0, 100],
    }),
    { season: USUAL_SEASON, stock: stockIn(told.season ?? USUAL_SEASON), ...told },
  )!;

const of = (margins: readonly Margin[], code: Margin['code'], subject: string) =>
  margins.filter((margin) => margin.code === code && margin.subjects.includes(subject));

/** What the first joint of a design holds. */
const holdOf = (design: Design, told: Partial<Pick<Told, 'stock' | 'glue'>> = {}) =>
  jointHold({ design, stock: told.stock ?? stockIn(USUAL_SEASON) }, design.joints[0]!, glueShear(told.glue)!);

describe('what a joint holds', () => {
  test('a loose tenon 9.9 × 40, 25 mm in each board: the leg governs, its wood rolls; the lever is half the rail', () => {
    const design = gate();
    const hold = holdOf(design);
    if (typeof hold === 'string') throw new Error(hold);
    // 2 · 25 · 30.1 mm² of cheek: 3324 N at mean shear of 12.27 MPa
    expect(hold.pull).toBeCloseTo(2 * 25 * 30.1 * ROLLING_SHARE * SHEAR, 6);
    expect(hold.pull / SHEAR).toBeCloseTo(3324 / 12.27, 0);
    expect(hold.governs).toBe('left leg');
    expect(hold.levers).toEqual([15, 30].map((mm) => expect.closeTo(mm, 6)));
    // across, the tenon's own section gives first; 10 deep, the glue along its cheeks, the tenon's wood rolling
    expect(hold.shear[0]).toBeCloseTo((9.9 * 30.1 * SHEAR) / 1.5, 6);
    const low = gate({ inLegs: 11 });
    const shallow = holdOf(low);
    expect(typeof shallow === 'string' ? 0 : shallow.shear[0]).toBeCloseTo(
      2 * 10 * 30.1 * ROLLING_SHARE * SHEAR,
      6,
    );
    // off the middle, the way to the nearer edge counts
    const off = gate({ options: { shiftAlong: 4 } });
    const shifted = holdOf(off);
    expect(typeof shifted === 'string' ? shifted : shifted.levers[1]).toBeCloseTo(26, 6);
  });

  test('a deeper mortise in the rail helps nothing while the leg governs; two tenons hold what both hold', () => {
    const pull = (asked: Asked) => {
      const design = gate(asked);
      const hold = holdOf(design);
      return typeof hold === 'string' ? 0 : hold.pull;
    };
    expect(pull({ inRail: 40 })).toBeCloseTo(pull({}), 6);
    expect(pull({ inLegs: 31 }) / pull({})).toBeCloseTo(30 / 25, 6);
    const two = pull({ options: { tenons: 2, tenonWidth: 20, web: 2 } });
    expect(two).toBeCloseTo(2 * 2 * 25 * (20 - 9.9) * ROLLING_SHARE * SHEAR, 6);
  });

  test('a glue that was measured bounds what cheeks hold; tenons of weaker wood give first, and grain that runs out weakens them', () => {
    const of = (asked: Asked, told: Parameters<typeof holdOf>[1] = {}) => {
      const hold = holdOf(gate(asked), told);
      if (typeof hold === 'string') throw new Error(hold);
      return hold;
    };
    const usual = of({});
    // 1 MPa is less than oak rolls at: the glue on 2 · 25 · 30.1 mm² of cheek
    expect(of({}, { glue: { kind: 'other', shear: 1 } }).pull).toBeCloseTo(2 * 25 * 30.1, 6);
    expect(of({}, { glue: { kind: 'other', shear: 9 } }).pull).toBeCloseTo(usual.pull, 9);
    const cedar = of({ options: { tenonWood: 'western red cedar' } });
    const cedarShear = fivePercent(species('western red cedar').shear, VARIATION.shear);
    expect(cedar.shear[0]).toBeCloseTo((9.9 * 30.1 * cedarShear) / 1.5, 6);
    expect(cedar.shearGoverns).toBe('the tenons themselves');
    const bare = { ...stockIn(USUAL_SEASON), grainOneIn: 4 };
    const thin = { inLegs: 60, inRail: 60, options: { tenonThickness: 2, cutter: 2.2, tenonWidth: 10 } };
    const torn = of(thin);
    expect(torn.governs).toBe('the tenons themselves');
    expect(of(thin, { stock: bare }).pull).toBeLessThan(0.6 * torn.pull);
  });

  test('what cannot be said is told with its reason', () => {
    const why = (design: Design, told: Partial<Told> = {}) =>
      worked(design, told)
        .notComputed.map(({ why: text }) => text)
        .join('\n');
    expect(why(gate({ options: { cutter: 10.3, cheekClearance: 0.2 } }))).toMatch(/more than 0\.3 mm/);
    expect(why(gate({ material: 'birch plywood' }))).toMatch(/no published strength of birch plywood/);
    expect(why(gate(), { season: seasonIn(climate('unheated-shed')) })).toMatch(
      /18\.5 % of water.*above 15 %/,
    );
    expect(why(gate(), { glue: { kind: 'other' } })).toMatch(/not measured.*glue, shear/);
    expect(why(gate({ options: { tenonWood: 'birch plywood' } }))).toMatch(
      /its tenons: no published strength of birch plywood/,
    );
    expect(why(gate())).toMatch(/how stiff a joint is was not measured/);
    for (const design of [
      gate({ options: { cutter: 10.3, cheekClearance: 0.2 } }),
      gate({ material: 'birch plywood' }),
    ])
      expect(of(worked(design).margins, 'joint-racked', 'left-leg')).toEqual([]);
  });
});

describe('a frame pushed sideways', () => {
  // feet in the middles of the legs, 340 apart; the push is at 400, the joints at 370 and 20 mm inside the feet
  const [push, height, joint, span] = [300, 400, 370, 340];
  const upright = (push * height) / span;
  const moment = (push / 2) * joint - upright * 20;

  test('each joint of a gate bears half of the push times its height, and the pull of half the push', () => {
    const { margins } = worked(gate());
    for (const id of ['rail/left-leg', 'rail/right-leg']) {
      const [racked] = of(margins, 'joint-racked', id);
      expect(racked!.figure * 1000).toBeCloseTo(moment + (push / 2) * 30, -2);
      expect(racked!.error! * 1000).toBeCloseTo(30 * 2 * 25 * 30.1 * ROLLING_SHARE * SHEAR, 3);
      expect(racked!.warning! / racked!.error!).toBeCloseTo(0.565, 9);
      expect(racked!.governs).toMatch(/leg$/);
    }
  });

  test('its sway follows from a stiffness that was measured, and is a band when none was', () => {
    const sways = (told: Partial<Told> = {}) =>
      worked(gate(), told)
        .margins.filter(({ code }) => code === 'piece-sways')
        .map(({ figure }) => figure);
    const { elasticity } = species(OAK);
    const [column, rail] = [(100 * 40 ** 3) / 12, (30 * 60 ** 3) / 12];
    // the rail's ends stand 20 mm inside the legs' middles: legs that lean tip its line the other way
    const turn = (moment / 5e6 + (moment * 300) / (6 * elasticity * rail)) * (300 / span);
    const [measured] = sways({ jointStiffness: 5000 });
    const expected = joint * turn + ((push / 2) * joint ** 3) / (3 * elasticity * column);
    // and the joints give a little along their seats
    expect(Math.abs(measured! / expected - 1)).toBeLessThan(0.05);
    const [stiff, soft] = sways();
    expect(stiff!).toBeLessThan(measured!);
    expect(soft!).toBeGreaterThan(measured!);
    expect(worked(gate(), { jointStiffness: 5000 }).notComputed.map(({ what }) => what)).not.toContain(
      'sway',
    );
  });
});

test('feet slip where the frame presses them apart by more than a fifth of what stands on them: statics tell the rest', () => {
  // held, the feet of so wide a gate would press outward by more; slipping, each holds a tenth of the load in the middle
  const load = 110 * GRAVITY;
  const moment = 0.1 * load * 370 - 0.5 * load * 20;
  const [daily] = of(worked(gate({ between: 1500 })).margins, 'joint-pulled', 'rail/left-leg');
  expect(daily!.figure / (moment / 30 - 0.1 * load)).toBeCloseTo(1, 2);
});

/** A model whose treads are stood on, whatever it says of them itself. */
const stoodOn = (model: Model): Model => ({
  ...model,
  build: (values, tools) => {
    const design = model.build(values, tools);
    const uses = design.boards
      .filter(({ board: { id } }) => id.endsWith('tread'))
      .map(({ board: { id } }) => ({ board: id, use: 'step' as const }));
    return { ...design, uses };
  },
});

const JOINTS: readonly string[] = ['joint-pulled', 'joint-racked', 'tenons-sheared'];

test('a load on an overhang lifts the far leg by its statics: load times overhang over span', () => {
  const leg = (id: string, x: number) =>
    board(
      id,
      [300, 100, 30],
      [
        [x, 100, 0],
        [1, 0, 0],
        [0, 0, 1],
      ],
    );
  const bench = assemble({
    name: 'bench',
    title: 'Bench',
    cutter: 8,
    boards: [
      leg('left-leg', 85),
      leg('right-leg', 305),
      board(
        'top',
        [420, 100, 24],
        [
          [0, 0, 300],
          [0, 0, 1],
          [1, 0, 0],
        ],
      ),
    ],
    joints: ['left-leg', 'right-leg'].map((b) => ({
      a: 'top',
      b,
      options: { cutter: 8, depths: { top: 12 } },
    })),
  });
  const at: Vec3 = [420, 50, 324];
  const skeleton = skeletonOf(bench, [{ board: 'top', at }], 0);
  const node = skeleton.nodeAt('top', at)!;
  const { passed: through } = framed(skeleton, FIRM)!([{ node, at, force: [0, 0, -1471.5] }]);
  // legs in the middle of their thickness at 100 and 320: 100 beyond a span of 220
  const far = bench.joints.findIndex(({ b }) => b === 'left-leg');
  const { seat } = bench.joints[far]!;
  // from the top into the leg: a pull holds the leg up
  expect(through[far]!.force[2] * seat.z[2]).toBeCloseTo((1471.5 * 100) / 220, 0);
});

describe('the stools', () => {
  const shop = builtInShop('mm');
  const stool = stoodOn(stoolModel as unknown as Model);
  const built = (v: Record<string, unknown>) => stool.build(readParameters(stool, v, 'mm'), toolsOf(shop));

  test('the joints of both stools as they come hold what they are asked to', () => {
    for (const treads of [1, 2]) {
      const { margins } = worked(built({ treads }));
      const ours = margins.filter(({ code }) => JOINTS.includes(code));
      expect(ours.length).toBeGreaterThan(10);
      expect(ours.filter((margin) => passed(margin)).map(({ what }) => what)).toEqual([]);
    }
  });

  test('a wide stretcher takes moment from the treads', () => {
    const racked = (v: Record<string, unknown>) =>
      of(worked(built({ height: 400, ...v })).margins, 'joint-racked', 'tread')[0]!.figure;
    const low = racked({ stretcherHeight: 30, stretcherWidth: 50, archHeight: 0 });
    expect(racked({ stretcherHeight: 200, stretcherWidth: 120 })).toBeLessThan(low);
  });

  test('the frame of a light bears nobody: nothing is asked of its joints', () => {
    const light = frameModel as unknown as Model;
    expect(
      strengthOf(light.build(readParameters(light, {}, 'mm'), toolsOf(shop)), () => {
        throw new Error('asked');
      }),
    ).toBeUndefined();
  });

  test('joints too weak to be pushed sideways are found, and a stronger wood ends it', async () => {
    const question: Question = { model: stool, shop, jig: jigOfShop(shop, jigModel, 'mm'), units: 'mm' };
    const given = { height: 500, wood: 'eastern white pine', rake: 0 };
    const values = readParameters(stool, given, 'mm');
    const errors = async (v: Record<string, unknown>) =>
      (await verdictOf(question, v)).findings.filter(({ level }) => level === 'error');
    const before = await errors(values);
    expect(before.map(({ code }) => code)).toContain('joint-racked');
    const after = await errors({ ...values, wood: 'white ash' });
    expect(after.map(({ code }) => code)).not.toContain('joint-racked');
  });
});

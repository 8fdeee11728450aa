import fc from 'fast-check';
import { expect, test } from 'vitest';
import stool from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { readParameters } from '../../src/model/index.js';
import { passed, type Strength } from '../../src/strength/index.js';
import { smallTable } from '../designs/small-table.js';
import { many, SEED, seed } from '../properties/seed.js';
import { borne, margin } from './on-solids.js';
import { pushThatTips, rigidOf } from './tipped.js';

/** The stool of the worked example: its feet stand hardly beyond its tread. */
const stoolOf = (values: Record<string, unknown> = {}): Design => ({
  ...stool.build(
    readParameters(
      stool,
      { treadLength: 420, treadDepth: 240, overhang: 30, setback: 10, rake: 10, taper: 3, ...values },
      'mm',
    ),
  ),
  uses: [{ board: values.treads === 2 ? 'lower-tread' : 'tread', use: 'step' }],
});

test('the feet of a stool 420 × 240 stand 5.6 mm beyond its ends and 1.0 mm beyond its front: 215.6 and 121.0 by its angles', () =>
  borne(stoolOf(), (strength) => {
    expect(margin(strength, 'room', 'left').figure).toBeCloseTo(5.6, 1);
    expect(margin(strength, 'room', 'right').figure).toBeCloseTo(5.6, 1);
    expect(margin(strength, 'room', 'front').figure).toBeCloseTo(1, 1);
    // with 4 kg of its own 27 N and 347 N; this one weighs 3.79 kg
    const { kg } = strength.asked.resting;
    const by = (own: number, inside: number) => (1471.5 * inside + own * 9.81 * 121.0) / 230;
    expect(by(4, 1.0)).toBeCloseTo(27, 0);
    expect(by(4, 51)).toBeCloseTo(347, 0);
    expect(margin(strength, 'bare', 'front').figure).toBeCloseTo(by(kg, 1.0084), 0);
    expect(margin(strength, 'wholly').figure).toBeCloseTo(by(kg, 51.0084), 0);
    expect(passed(margin(strength, 'room', 'front'))).toEqual({ level: 'warning', limit: 10 });
  }));

const LEANING = { treads: 1, rake: 17, taper: 5, overhang: 10, setback: 4, treadLength: 420 };

const TOWARDS = { front: -90, back: 90, left: 180, right: 0 } as const;

/** Pushes at every side, worked out, and found by rolling the solids over. */
const compared = (design: Design) =>
  borne(design, (strength: Strength, solids) => {
    const rigid = rigidOf(solids);
    expect(Math.abs(strength.asked.resting.kg * 9.81 - rigid.weight)).toBeLessThan(0.2);
    return Object.entries(TOWARDS).map(([side, towards]) => {
      const { figure, at } = margin(strength, 'bare', `push to the ${side}`);
      return { side, figure, found: pushThatTips(rigid, { force: 1471.5, at: at! }, towards) };
    });
  });

test(`the push that tips a stool towards a side is the one that rolls its solids over, whatever its sizes (seed ${SEED})`, () =>
  fc.assert(
    fc.asyncProperty(
      fc.record({
        treads: fc.constantFrom(1, 2),
        rake: fc.integer({ min: 9, max: 18 }),
        taper: fc.integer({ min: 3, max: 9 }),
        overhang: fc.integer({ min: 0, max: 15 }),
        setback: fc.integer({ min: 0, max: 4 }),
        treadLength: fc.integer({ min: 380, max: 600 }),
      }),
      async (values) => {
        for (const { side, figure, found } of await compared(stoolOf(values)))
          expect(Math.abs(found - figure), side).toBeLessThan(0.5 + 0.005 * Math.abs(figure));
      },
    ),
    // whose feet have corners that differ in their last bits alone
    { ...seed(many(3, 8)), examples: [[LEANING]] },
  ));

test('a stool 600 high whose feet stand far inside its tread tips under a foot at its end, and so do its solids', async () => {
  const high = stoolOf({ height: 600, overhang: 80, rake: 0, taper: 0, treadDepth: 140, archHeight: 0 });
  await borne(high, (strength, solids) => {
    const end = margin(strength, 'room', 'right');
    expect(end.figure).toBeCloseTo(-80, 6);
    expect(passed(end)).toEqual({ level: 'error', limit: 0 });
    // the smallest load that tips it leaves no push at all
    const load = margin(strength, 'smallest load', 'right');
    const rolled = pushThatTips(rigidOf(solids), { force: load.figure, at: load.at! }, 0);
    expect(Math.abs(rolled)).toBeLessThan(0.05);
  });
});

test('a table that reaches 40 mm beyond its legs is told what tips it at its edge', () =>
  borne({ ...smallTable(), uses: [{ board: 'top', use: 'table-top' }] }, (strength, solids) => {
    const load = margin(strength, 'smallest load', 'front');
    // by hand: own weight at half the depth between the legs' outer faces, over the overhang
    expect(load.figure).toBeCloseTo((strength.asked.resting.kg * 9.81 * 185) / 40, 0);
    expect(Math.abs(pushThatTips(rigidOf(solids), { force: load.figure, at: load.at! }, -90))).toBeLessThan(
      0.05,
    );
  }));

test('a use that names no board, or a face nobody can stand on, is refused', () => {
  const wrong = (uses: Design['uses']) => borne({ ...stoolOf(), ...(uses && { uses }) }, () => undefined);
  return Promise.all([
    expect(wrong([{ board: 'stair', use: 'step' }])).rejects.toThrow('there is no board stair'),
    expect(wrong([{ board: 'stretcher', use: 'step', face: 'reference-face' }])).rejects.toThrow('level'),
  ]);
});

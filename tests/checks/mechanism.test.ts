import { describe, expect, test } from 'vitest';
import { assemble, type Design, type Hardware, type Mechanism, STILL } from '../../src/assembly/index.js';
import { makeBoard } from '../../src/board/index.js';
import { frame, WORLD } from '../../src/frame/index.js';
import { circle } from '../../src/profile/index.js';
import * as sample from './sample-design.js';

/** Its bars are held by nothing, which is not what is asked here. */
const LOOSE = 'board-joined-to-nothing';
const codes = async (design: Design) => (await sample.codes(design)).filter((code) => code !== LOOSE);
const findings = async (design: Design) =>
  (await sample.findings(design)).filter(({ code }) => code !== LOOSE);

const bar = (id: string, y: number) => ({
  board: makeBoard({ id, blank: { length: 300, width: 40, thickness: 45 } }),
  place: { ...WORLD, origin: [0, y, 0] as const },
});
/** Two bars, 30 apart; in the pose `closed` the far one is 20 nearer, in `open` 20 farther. */
const vice = (more: Partial<Mechanism>): Design =>
  assemble({
    name: 'vice',
    title: 'Vice',
    cutter: 8,
    boards: [bar('near', 0), bar('far', 70)],
    mechanism: {
      ...STILL,
      poses: [
        { name: 'closed', shift: { far: [0, -20, 0] } },
        { name: 'open', shift: { far: [0, 20, 0] } },
      ],
      ...more,
    },
  });

describe('pieces kept apart', () => {
  const rule = (least: number) =>
    vice({
      keepApart: [
        { code: 'knobs-touch', a: 'near', b: 'far', least, why: 'room for fingers', remedy: 'open it' },
      ],
    });

  test('are measured in the pose in which they come nearest', async () => {
    // 30 − 20
    expect(await codes(rule(9.9))).toEqual([]);
    const [finding, ...more] = await findings(rule(10.1));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      code: 'knobs-touch',
      level: 'error',
      subjects: ['near', 'far'],
      limit: 10.1,
    });
    expect(finding!.measured).toBeCloseTo(10, 6);
    expect(finding!.message).toBe(
      'near and far come within 10.0 mm of each other at the closed; they need 10.1 mm, because room for fingers',
    );
  });
});

describe('ranges', () => {
  test.each([
    ['closed', 'at most', 10.1, true],
    ['closed', 'at most', 9.9, false],
    ['open', 'at least', 49.9, true],
    ['open', 'at least', 50.1, false],
  ] as const)('%s, %s %f mm: reached is %s', async (pose, sense, wanted, reached) => {
    const design = vice({
      reaches: [{ a: 'near', b: 'far', pose, wanted, sense, what: 'work', remedy: 'move it' }],
    });
    expect(await codes(design)).toEqual(reached ? [] : ['range-not-reached']);
    for (const finding of await findings(design))
      expect(finding.measured).toBeCloseTo(pose === 'open' ? 50 : 10, 6);
  });
});

describe('pieces in every pose', () => {
  test('may touch, and may not be in one place', async () => {
    const shut = (by: number) => vice({ poses: [{ name: 'shut', shift: { far: [0, -by, 0] } }] });
    expect(await codes(shut(30))).toEqual([]);
    const [finding, ...more] = await findings(shut(30.05));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ code: 'pieces-overlap', subjects: ['far', 'near'] });
    // 300 × 45 × 0.05
    expect(finding!.measured).toBeCloseTo(300 * 45 * 0.05, 3);
    expect(finding!.message).toContain('with the jig at its shut');
  });
});

describe('screws', () => {
  const at = (z: number) => frame([0, 0, z], [0, 0, 1], [1, 0, 0]);
  const disc = (diameter: number) => circle({ diameter });
  /** A screw up to z = 30 + entered in a knob from z = 30 up, with a hole 20 deep. */
  const screwed = (entered: number): Design => {
    const screw: Hardware = {
      id: 'screw',
      kind: 'bolt',
      name: 'bolt',
      bought: true,
      place: at(0),
      stages: [{ outline: disc(7.9), from: 0, to: 30 + entered }],
    };
    const knob: Hardware = {
      id: 'knob',
      kind: 'knob',
      name: 'knob',
      bought: true,
      place: at(30),
      stages: [
        { outline: disc(30), bores: [disc(8)], from: 0, to: 20 },
        { outline: disc(30), from: 20, to: 28 },
      ],
    };
    return assemble({
      name: 'screwed',
      title: 'Screwed',
      cutter: 8,
      boards: [],
      hardware: [screw, knob],
      mechanism: { ...STILL, engagements: [{ screw: 'screw', nut: 'knob', least: 8, tipAir: 1 }] },
    });
  };

  test.each([
    [7.9, ['bolt-too-short']],
    [8.1, []],
    [18.9, []],
    [19.1, ['bolt-too-long']],
  ])('%f mm in a hole 20 deep', async (entered, expected) => {
    expect(await codes(screwed(entered))).toEqual(expected);
  });

  test('the figures are those on the bench', async () => {
    expect((await findings(screwed(5)))[0]!.message).toBe(
      'screw goes 5.0 mm into knob; it needs at least 8.0 mm to hold',
    );
    expect((await findings(screwed(19.5)))[0]).toMatchObject({ measured: expect.closeTo(0.5, 6), limit: 1 });
  });
});

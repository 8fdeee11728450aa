import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import { type Frame, moved, scale, type Vec3 } from '../../src/frame/index.js';
import { type JoinOptions, PRACTICE } from '../../src/joinery/index.js';
import { regionBounds } from '../../src/profile/index.js';
import { section } from '../../src/solid/index.js';
import { onSolids } from '../checks/sample-design.js';
import { across, design, lying } from './crowded-designs.js';
import { refusal } from './on-the-bench.js';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

/** A rail on edge on a thick board; its mortises lean by two angles, along the rail and across it. */
const leaning = (
  length: number,
  along: number,
  sideways: number,
  options: JoinOptions = {},
  thick = 60,
): Design => {
  const axis: Vec3 = [Math.tan(rad(along)), Math.tan(rad(sideways)), 1];
  return design(
    [
      lying('base', [600, 200, 60], [0, 0, 0]),
      across('rail', [length, 120, thick], [100, 100 - thick / 2, 60]),
    ],
    [{ a: 'base', b: 'rail', options: { cutter: 10, depths: { base: 20, rail: 20 }, axis, ...options } }],
  );
};

/** What the mouths leave of the rail's foot, found by a section through its solid a hair above the seat, mm. */
interface Mouths {
  /** Wood past the outer mouths, and between neighbours. */
  readonly ends: readonly [number, number];
  readonly between: readonly number[];
  readonly wide: number;
}

const mouths = (of: Design): Promise<Mouths> =>
  onSolids(of, ({ boards }) => {
    const seat: Frame = of.joints[0]!.seat;
    const plane = moved(seat, scale(seat.z, 0.001));
    const loops = section(boards.get('rail')!.body, plane).map((loop) => regionBounds([loop]));
    const [foot, ...holes] = loops.toSorted((p, q) => q.maxX - q.minX - (p.maxX - p.minX));
    const sorted = holes.toSorted((p, q) => p.minX - q.minX);
    return {
      ends: [sorted[0]!.minX - foot!.minX, foot!.maxX - sorted.at(-1)!.maxX],
      between: sorted.slice(1).map((hole, i) => hole.minX - sorted[i]!.maxX),
      wide: sorted[0]!.maxY - sorted[0]!.minY,
    };
  });

/** The least over rails a tenth longer each: lengths are rounded down to half a millimetre, one of them hardly at all. */
async function least(lengths: number, of: (length: number) => Promise<number>): Promise<number> {
  let found = Number.POSITIVE_INFINITY;
  for (let i = 0; i < lengths; i += 1) found = Math.min(found, await of(200 + i / 10));
  return found;
}

describe('wood beside mortises that lean is counted on the seat, not along the mortise', () => {
  test.each([
    [0, 0],
    [20, 0],
    [-20, 0],
    [30, 0],
    // leaning both ways the mouth is a skewed obround, longer than the sum of its parts
    [35, 35],
  ])('at the ends of a row, leaning %i° along and %i° across', async (along, sideways) => {
    const wood = await least(8, async (length) =>
      Math.min(...(await mouths(leaning(length, along, sideways, { tenons: 1 }))).ends),
    );
    expect(wood).toBeGreaterThan(PRACTICE.endInset - 0.02);
    expect(wood).toBeLessThan(PRACTICE.endInset + 0.08);
  });

  test.each([0, 20, 30])('between two mortises, leaning %i° along', async (along) => {
    const wood = await least(
      12,
      async (length) => (await mouths(leaning(length, along, 0, { tenons: 2 }))).between[0]!,
    );
    expect(wood).toBeGreaterThan(PRACTICE.web - 0.02);
    expect(wood).toBeLessThan(PRACTICE.web + 0.2);
  });

  test('a shift along is as far on the seat as it was asked for', async () => {
    for (const along of [0, 25]) {
      const at = async (shiftAlong: number) =>
        (await mouths(leaning(220, along, 0, { tenons: 1, tenonWidth: 60, shiftAlong }))).ends[0];
      expect((await at(15)) - (await at(0))).toBeCloseTo(15, 2);
    }
  });

  test('places and spacing as well', async () => {
    const spaced = await mouths(leaning(300, 25, 0, { tenons: 2, tenonWidth: 40, spacing: 100 }));
    const placed = await mouths(leaning(300, 25, 0, { tenonWidth: 40, places: [-50, 50] }));
    const long = 41 / Math.cos(rad(25));
    expect(spaced.between[0]).toBeCloseTo(100 - long, 1);
    expect(placed.between[0]).toBeCloseTo(100 - long, 1);
  });

  test('across, the cutter takes its width over the cosine of the lean', async () => {
    const { wide } = await mouths(leaning(200, 0, 25, { tenons: 1 }));
    expect(wide).toBeCloseTo(10 / Math.cos(rad(25)), 1);
    // 10.5 of wood takes the cutter upright, not at 25°, where it takes 11.03
    const options = { tenons: 1, depths: { base: 12, rail: 12 }, endInset: 12.7 };
    expect(refusal(() => leaning(200, 0, 25, options, 10.5)).message).toContain(
      'its seat is 10.5 mm wide; it must be at least as wide as the cutter, 11.034 mm',
    );
    expect(leaning(200, 0, 0, options, 10.5).joints).toHaveLength(1);
  });
});

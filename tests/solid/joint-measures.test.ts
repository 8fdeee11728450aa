import { describe, expect, test } from 'vitest';
import { assemble } from '../../src/assembly/index.js';
import { frame, pointOut, type Vec3 } from '../../src/frame/index.js';
import { hit } from '../../src/solid/index.js';
import { measured, nudged, onSolids, sample, withMortises, withTenons } from '../checks/sample-design.js';
import { rakedPair } from '../joinery/on-the-bench.js';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
/** Facets of mating arcs. */
const FACETS = 0.011;

describe('a sound joint', () => {
  test('measures as it was asked for', async () => {
    const [t] = await measured(sample({ depths: { shelf: 18, upright: 45 }, tenonWidth: 80, endGap: 1.5 }));
    expect(t).toMatchObject({ width: expect.closeTo(80, 6), thickness: expect.closeTo(13.8, 6) });
    expect(t!.length).toBeCloseTo(18 + 45 - 3, 6);
    for (const mortise of t!.mortises) {
      expect(mortise.width).toBeCloseTo(14, 2);
      expect(mortise.length).toBeCloseTo(81, 2);
      expect(mortise.bottomClearance).toBeCloseTo(1.5, 6);
      expect(Math.abs(mortise.cheekClearance - 0.1)).toBeLessThan(FACETS);
    }
    expect(t!.mortises.map(({ depth }) => depth)).toEqual([expect.closeTo(18, 6), expect.closeTo(45, 6)]);
    expect(t!.offLine).toBeLessThan(1e-6);
    expect(t!.offLineDeg).toBeLessThan(1e-3);
  });

  test('has the walls its sizes leave', async () => {
    const [t] = await measured(sample({ depths: { shelf: 30, upright: 45 }, tenonWidth: 80 }));
    const [inShelf, inUpright] = t!.mortises;
    // 40 − 30 below the bottom; (40 − 14) / 2 beside it in the upright; (120 − 81) / 2 past its ends there
    expect(inShelf.wall).toBeCloseTo(10, 2);
    expect(inUpright.wall).toBeCloseTo(13, 2);
    expect(inUpright.endWood).toBeCloseTo(19.5, 2);
    // past the end in the shelf: 120 + 19.5 to its own end
    expect(inShelf.endWood).toBeGreaterThan(59);
    expect([inShelf.boardDepth, inUpright.boardDepth]).toEqual([
      expect.closeTo(40, 1),
      expect.closeTo(300, 1),
    ]);
  });
});

describe('a planted error is found by its size', () => {
  const design = sample();

  test('a tenon 0.3 mm out of its place along its length', async () => {
    const [t] = await measured(
      withTenons(design, (tenon) => ({ ...tenon, place: nudged(tenon.place, [0, 0, 0.3]) })),
    );
    expect(t!.mortises[0].bottomClearance).toBeCloseTo(1.3, 6);
    expect(t!.mortises[1].bottomClearance).toBeCloseTo(0.7, 6);
  });

  test('a tenon 0.06 mm out of its place across its thickness', async () => {
    const [t] = await measured(
      withTenons(design, (tenon) => ({ ...tenon, place: nudged(tenon.place, [0, 0.06, 0]) })),
    );
    for (const mortise of t!.mortises) expect(mortise.cheekClearance).toBeCloseTo(0.04, 3);
  });

  test('a tenon 0.3 mm too long, too thick by 0.1, or as wide as its mortise is long', async () => {
    const [long] = await measured(
      withTenons(design, (t) => ({ ...t, intoB: t.intoB + 0.3, length: t.length + 0.3 })),
    );
    expect(long!.mortises.map((m) => m.bottomClearance)).toEqual([
      expect.closeTo(1, 6),
      expect.closeTo(0.7, 6),
    ]);
    const [thick] = await measured(withTenons(design, (t) => ({ ...t, thickness: t.thickness + 0.1 })));
    for (const mortise of thick!.mortises) expect(mortise.cheekClearance).toBeCloseTo(0.05, 3);
    const [wide] = await measured(withTenons(design, (t) => ({ ...t, width: t.width + 1 })));
    for (const mortise of wide!.mortises) {
      // the round edges touch, the cheeks do not
      expect(mortise.flankClearance).toBeLessThan(FACETS);
      expect(Math.abs(mortise.cheekClearance - 0.1)).toBeLessThan(FACETS);
    }
  });

  test('a mortise 0.3 mm too shallow, or moved by 0.05 mm either way', async () => {
    const [shallow] = await measured(
      withMortises(design, 'upright', (m) => ({ ...m, depth: m.depth - 0.3 })),
    );
    expect(shallow!.mortises[1].bottomClearance).toBeCloseTo(0.7, 6);
    expect(shallow!.mortises[0].bottomClearance).toBeCloseTo(1, 6);
    for (const by of [
      [0.05, 0, 0],
      [0, 0.05, 0],
    ] as const) {
      const [moved] = await measured(
        withMortises(design, 'upright', (m) => ({ ...m, at: nudged(m.at, by) })),
      );
      expect(moved!.offLine).toBeCloseTo(0.05, 3);
    }
  });

  test('a mortise turned by 0.1° or tilted by 0.1°', async () => {
    const [turned] = await measured(
      withMortises(design, 'upright', (m) => ({ ...m, at: nudged(m.at, [0, 0, 0], 0.1) })),
    );
    expect(turned!.offLineDeg).toBeCloseTo(0.1, 3);
    const tilt = rad(0.1);
    const [tilted] = await measured(
      withMortises(design, 'upright', ({ at, ...m }) => {
        const z = at.z.map((part, i) => part * Math.cos(tilt) + at.y[i]! * Math.sin(tilt)) as unknown as Vec3;
        return { ...m, at: frame(at.origin, z, at.x) };
      }),
    );
    expect(tilted!.offLineDeg).toBeCloseTo(0.1, 2);
  });
});

describe.each([5, 12, 18])('a mortise square to the seat of a leg raked by %i°', (degrees) => {
  const rho = rad(degrees);
  const [thickness, cutter, depth] = [32, 6, 20];
  const { tread, leg } = rakedPair(rho, { thickness });
  const design = assemble({
    name: 'raked',
    title: 'Raked',
    cutter,
    boards: [tread, leg],
    joints: [{ a: 'tread', b: 'leg', options: { cutter, tenons: 1, depths: { leg: depth } } }],
  });
  // the seat is thickness / cos wide, the wood moves sideways by depth × tan on the way down, and a wall is cos of its level width
  const balanced = ((thickness / Math.cos(rho) - cutter - depth * Math.tan(rho)) / 2) * Math.cos(rho);

  test('has balanced walls: at its mouth on one side, at its bottom on the other', async () => {
    await onSolids(design, (solids) => {
      const { board, own } = solids.boards.get('leg')!;
      const { at } = board.mortises[0]!;
      const beside = (side: 1 | -1, z: number): number => {
        const from = pointOut(at, [0, side * (cutter / 2 + 0.001), z]);
        return hit(own, from, pointOut(at, [0, side * 200, z]))! * Math.cos(rho);
      };
      const [mouth, bottom] = [-0.001, -depth + 0.001];
      const walls = [1, -1].map((side) => [beside(side as 1 | -1, mouth), beside(side as 1 | -1, bottom)]);
      const [thinAtMouth, thinAtBottom] = walls.toSorted((a, b) => a[0]! - b[0]!);
      expect(thinAtMouth![0]).toBeCloseTo(balanced, 2);
      expect(thinAtBottom![1]).toBeCloseTo(balanced, 2);
      // and a drift more at the other end of each
      expect(thinAtMouth![1]! - balanced).toBeCloseTo(depth * Math.sin(rho), 1);
      expect(thinAtBottom![0]! - balanced).toBeCloseTo(depth * Math.sin(rho), 1);
    });
  });

  test('has that wall in the measures too', async () => {
    const [t] = await measured(design);
    expect(t!.mortises[1].wall).toBeCloseTo(balanced, 1);
  });
});

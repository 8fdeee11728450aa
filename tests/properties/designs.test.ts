import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import type { Design } from '../../src/assembly/index.js';
import { benchOf, type Finding, runChecks } from '../../src/checks/index.js';
import { cross, type Frame, frame, length, unit } from '../../src/frame/index.js';
import { speaker } from '../../src/length/index.js';
import {
  allSolids,
  gate,
  genus,
  type Solids,
  status,
  type TenonMeasure,
  volume,
} from '../../src/solid/index.js';
import { CLEARANCE_SLACK } from '../../src/tolerances.js';
import { onSolids } from '../checks/sample-design.js';
import { mirrored, moved } from './mirrored.js';
import { built, type Wish, wishes } from './random-designs.js';
import { many, SEED, seed } from './seed.js';

/** Designs of sizes chosen at random, and designs looked at a second and third time. */
const RUNS = many(16, 190);
const SEEN_AGAIN = many(4, 20);

/** Findings that say the program itself laid something out wrong: a model of sound sizes has none. */
const FAULTS: ReadonlySet<string> = new Set([
  'mortise-breaks-through',
  'mortises-out-of-line',
  'pieces-overlap',
  'tenon-bottoms-out',
  'tenon-end-gap',
  'tenon-too-tight',
  'volume-differs',
]);

let wished = 0;
const refused: string[] = [];
const designOf = (wish: Wish): Design | undefined => {
  wished += 1;
  const made = built(wish);
  if (!(made instanceof Error)) return made;
  refused.push(`${wish.model}: ${made.message}`);
  return undefined;
};

afterAll(() => {
  console.log(`seed ${SEED}: ${refused.length} of ${wished} random designs were refused`);
});

interface Verdict {
  readonly findings: readonly Finding[];
  readonly tenons: readonly TenonMeasure[];
  readonly volumes: readonly number[];
}

/** @throws SolidError when a body is unsound */
const judge = (design: Design, look: (solids: Solids) => void = () => {}): Promise<Verdict> =>
  onSolids(design, (solids) => {
    gate(solids);
    look(solids);
    const bench = benchOf(solids, speaker('mm'));
    const volumes = allSolids(solids).map(({ body }) => volume(body));
    return { findings: runChecks(bench), tenons: bench.tenons, volumes };
  });

test(`for all sizes that go together every body is closed, every joint clears by the fit asked for, and nothing overlaps (seed ${SEED})`, async () => {
  await fc.assert(
    fc.asyncProperty(wishes, async (wish) => {
      const design = designOf(wish);
      if (!design) return;
      const { findings, tenons } = await judge(design, (solids) => {
        for (const { kind, id, body } of allSolids(solids)) {
          expect(status(body), id).toBe('NoError');
          expect(volume(body), id).toBeGreaterThan(0);
          // blind mortises add no handle; only the hand opening does
          const opening = kind === 'board' ? (solids.boards.get(id)?.board.openings.length ?? 0) : 0;
          expect(genus(body), id).toBe(opening);
        }
      });
      expect(findings.filter(({ code }) => FAULTS.has(code)).map(({ message }) => message)).toEqual([]);
      expect(tenons.length).toBe(design.joints.reduce((sum, joint) => sum + joint.tenons.length, 0));
      for (const { joint, thickness, width, mortises } of tenons) {
        for (const mortise of mortises) {
          expect(mortise.cheekClearance).toBeGreaterThanOrEqual(joint.fit.cheek - CLEARANCE_SLACK);
          expect(mortise.bottomClearance).toBeGreaterThanOrEqual(joint.fit.end - CLEARANCE_SLACK);
          expect(mortise.length - width).toBeCloseTo(joint.fit.edge, 1);
          expect(mortise.width - thickness).toBeCloseTo(2 * joint.fit.cheek, 1);
          expect(mortise.wall).toBeGreaterThan(0);
        }
      }
    }),
    // the first case that fails is told as it is: making it smaller takes minutes
    { ...seed(RUNS), endOnFailure: true },
  );
});

const anywhere: fc.Arbitrary<Frame> = fc
  .tuple(...Array.from({ length: 9 }, () => fc.double({ min: -1, max: 1, noNaN: true })))
  .filter((n) => {
    const [z, x] = [n.slice(3, 6), n.slice(6, 9)] as unknown as [Frame['x'], Frame['x']];
    return length(z) > 0.1 && length(x) > 0.1 && length(cross(unit(z), unit(x))) > 0.1;
  })
  .map((n) =>
    frame([n[0]! * 2000, n[1]! * 2000, n[2]! * 2000], [n[3]!, n[4]!, n[5]!], [n[6]!, n[7]!, n[8]!]),
  );

/** What is said of a design, without the places that change when it moves. */
const said = (findings: readonly Finding[]): readonly string[] =>
  findings.map(({ code, level, subjects }) => `${level} ${code} ${subjects.toSorted().join(' ')}`).toSorted();

const rounded = (found: readonly number[], digits = 1): readonly number[] =>
  found.map((value) => expect.closeTo(value, digits) as unknown as number);

const expectSame = (seen: Verdict, first: Verdict): void => {
  expect(said(seen.findings)).toEqual(said(first.findings));
  for (const [i, tenon] of seen.tenons.entries()) {
    const before = first.tenons[i]!;
    expect([tenon.length, tenon.width, tenon.thickness]).toEqual(
      rounded([before.length, before.width, before.thickness], 3),
    );
    for (const [k, mortise] of tenon.mortises.entries()) {
      const { cheekClearance, bottomClearance, wall } = before.mortises[k]!;
      // facets lie elsewhere on the arcs
      expect(Math.abs(mortise.cheekClearance - cheekClearance)).toBeLessThan(CLEARANCE_SLACK);
      expect([mortise.bottomClearance, mortise.wall]).toEqual(rounded([bottomClearance, wall]));
    }
  }
  for (const [i, size] of seen.volumes.entries()) expect(size / first.volumes[i]!).toBeCloseTo(1, 4);
};

/** What is about the floor and the way down: how a piece stands, and what its boards and joints bear of a load. */
const NEEDS_FLOOR: ReadonlySet<string> = new Set([
  'edge-outside-feet',
  'tips-sideways',
  'board-breaks',
  'board-shears',
  'board-crushed',
  'board-gives',
  'shelf-sags',
  'tips-under-load',
  'joint-pulled',
  'joint-racked',
  'tenons-sheared',
  'piece-sways',
]);

test(`for all designs moving or mirroring the whole changes no verdict (seed ${SEED})`, async () => {
  const defaults: readonly Wish[] = [
    { model: 'stool', raw: { treads: 2 } },
    { model: 'frame', raw: {} },
    { model: 'jig', raw: {} },
    ...Array.from({ length: many(0, 1) }, (): Wish => ({ model: 'stool', raw: {} })),
  ];
  const home = frame([100, -200, 300], [1, 2, 3], [3, 0, 1]);
  await fc.assert(
    fc.asyncProperty(wishes, anywhere, async (wish, to) => {
      const design = designOf(wish);
      if (!design) return;
      const first = await judge(design);
      // how a piece stands is about the floor, which does not move with it
      const wood = first.findings.filter(({ code }) => !NEEDS_FLOOR.has(code));
      expectSame(await judge(moved({ ...design, uses: [] }, to)), { ...first, findings: wood });
      expectSame(await judge(mirrored(design)), first);
    }),
    {
      ...seed(SEEN_AGAIN),
      endOnFailure: true,
      examples: defaults.map((wish): [Wish, Frame] => [wish, home]),
    },
  );
});

test('a design mirrored twice is the design', () => {
  const design = built({ model: 'stool', raw: { treads: 2 } }) as Design;
  const twice = mirrored(mirrored(design));
  const closeTo = (value: unknown): unknown => {
    if (typeof value === 'number') return expect.closeTo(value, 9);
    if (Array.isArray(value)) return value.map(closeTo);
    if (value && typeof value === 'object') {
      return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, closeTo(part)]));
    }
    return value;
  };
  expect(twice.joints).toEqual(closeTo(design.joints));
  expect(twice.boards.map(({ place }) => place)).toEqual(closeTo(design.boards.map(({ place }) => place)));
  expect(twice.boards.map(({ board }) => board.mortises)).toEqual(
    closeTo(design.boards.map(({ board }) => board.mortises)),
  );
});

test('sizes that go together are rarely refused: fewer than 30 in 100', () => {
  expect(wished).toBeGreaterThanOrEqual(RUNS + SEEN_AGAIN);
  expect(refused.length / wished, refused.join('\n')).toBeLessThan(0.3);
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { linksAmong } from '../../src/shop/glue-up/glue-up-links.js';

type Joint = readonly [number, number];

const neighboursOf = (count: number, joints: readonly Joint[]) =>
  new Map(
    Array.from({ length: count }, (_, i) => [
      `b${i}`,
      joints.flatMap(([a, b]) => (a === i ? [`b${b}`] : b === i ? [`b${a}`] : [])),
    ]),
  );

/** Whether joints lead from one of the boards to all others: looked for by spreading until nothing is added. */
function inOnePiece(boards: readonly string[], neighbours: ReadonlyMap<string, readonly string[]>): boolean {
  const reached = new Set(boards.slice(0, 1));
  for (const at of reached) for (const to of neighbours.get(at)!) if (boards.includes(to)) reached.add(to);
  return reached.size === boards.length;
}

test('for any boards in one piece a link is a board without which the rest falls into pieces', () => {
  const pieces = fc.integer({ min: 1, max: 12 }).chain((count) =>
    fc.record({
      // each board is jointed to an earlier one, so that all are in one piece
      stems: fc.tuple(
        ...Array.from({ length: count }, (_, i) => fc.integer({ min: 0, max: Math.max(0, i - 1) })),
      ),
      more: fc.array(fc.tuple(fc.nat(count - 1), fc.nat(count - 1)), { maxLength: 8 }),
    }),
  );
  fc.assert(
    fc.property(pieces, ({ stems, more }) => {
      const joints: Joint[] = [
        ...stems.flatMap((to, i): Joint[] => (i > 0 ? [[to, i]] : [])),
        ...more.filter(([a, b]) => a !== b),
      ];
      const neighbours = neighboursOf(stems.length, joints);
      const boards = [...neighbours.keys()];
      const expected = boards.filter(
        (board) =>
          !inOnePiece(
            boards.filter((id) => id !== board),
            neighbours,
          ),
      );
      expect([...linksAmong(boards, neighbours)].toSorted()).toEqual(expected.toSorted());
    }),
    { numRuns: 500 },
  );
});

test('boards that are taken off already link nothing', () => {
  const ring = neighboursOf(4, [
    [0, 1],
    [1, 2],
    [2, 3],
    [3, 0],
  ]);
  expect(linksAmong([...ring.keys()], ring)).toEqual(new Set());
  expect(linksAmong(['b0', 'b1', 'b2'], ring)).toEqual(new Set(['b1']));
});

test('in a chain of ten thousand boards all but the ends are links', () => {
  const count = 10_000;
  const chain = neighboursOf(0, []);
  for (let i = 0; i < count; i += 1)
    chain.set(
      `b${i}`,
      [i - 1, i + 1].filter((at) => at >= 0 && at < count).map((at) => `b${at}`),
    );
  expect(linksAmong([...chain.keys()], chain).size).toBe(count - 2);
});

import { expect, test } from 'vitest';
import { fenceDistance, type GrooveSpec, makeBoard, withGroove } from '../../src/board/index.js';
import { BoardError } from '../../src/errors.js';
import { dot, frame } from '../../src/frame/index.js';
import { polygon } from '../../src/profile/index.js';
import {
  boardBody,
  box,
  expectedVolume,
  genus,
  startKernel,
  status,
  stockBody,
  volume,
} from '../../src/solid/index.js';

const rail = makeBoard({ id: 'rail', blank: { length: 600, width: 70, thickness: 20 } });
const inEdge: GrooveSpec = {
  face: 'reference-edge',
  from: 'reference-face',
  distance: 7,
  width: 6,
  depth: 10,
};

/** The air of a groove, cut out on the solids. */
async function air(board: ReturnType<typeof withGroove>) {
  const kernel = await startKernel();
  const stock = stockBody(kernel, board);
  const own = boardBody(kernel, board, stock);
  const taken = stock.subtract(own);
  const found = {
    volume: volume(taken),
    box: box(taken),
    genus: genus(own),
    status: status(own),
    left: volume(own),
    expected: expectedVolume(board)!,
  };
  kernel.dispose();
  return found;
}

test('a through groove in an edge takes width times depth times the length of the board, at its distance from the face', async () => {
  const found = await air(withGroove(rail, inEdge));
  expect(found.volume).toBeCloseTo(6 * 10 * 600, 3);
  expect(found.box.min.map((at) => Math.round(at * 1000) / 1000)).toEqual([0, 0, 7]);
  expect(found.box.max.map((at) => Math.round(at * 1000) / 1000)).toEqual([600, 10, 13]);
  expect([found.status, found.genus]).toEqual(['NoError', 0]);
  expect(Math.abs(found.left - found.expected.volume)).toBeLessThan(found.expected.allowance);
});

test('a groove stops before the ends with the half circles of its cutter', async () => {
  const found = await air(withGroove(rail, { ...inEdge, stop: { start: 50, end: 80 } }));
  expect(found.box.min[0]).toBeCloseTo(50, 2);
  expect(found.box.max[0]).toBeCloseTo(520, 2);
  const closed = (6 * (470 - 6) + Math.PI * 9) * 10;
  expect(Math.abs(found.volume - closed)).toBeLessThan(3);
  expect(found.expected.volume).toBeCloseTo(600 * 70 * 20 - closed, 1);
  expect(Math.abs(found.left - found.expected.volume)).toBeLessThan(found.expected.allowance);
});

test.each([
  ['opposite-edge', 'opposite-face', [0, 60, 7], [600, 70, 13]],
  ['opposite-face', 'reference-edge', [0, 7, 10], [600, 13, 20]],
  ['reference-face', 'opposite-edge', [0, 57, 0], [600, 63, 10]],
  ['opposite-face', 'reference-end', [7, 0, 10], [13, 70, 20]],
  ['reference-end', 'reference-face', [0, 0, 7], [10, 70, 13]],
] as const)('a groove in the %s lies at its distance from the %s', async (face, from, least, most) => {
  const board = withGroove(rail, { ...inEdge, face, from });
  const found = await air(board);
  least.forEach((at, i) => {
    expect(found.box.min[i]!).toBeCloseTo(at, 3);
    expect(found.box.max[i]!).toBeCloseTo(most[i]!, 3);
  });
  expect(fenceDistance(board, board.grooves[0]!)).toBeCloseTo(7, 9);
  const { at } = board.grooves[0]!;
  expect(dot(at.x, frame(at.origin, at.z, at.x).x)).toBeCloseTo(1, 12);
});

test.each([
  ['opposite-edge', 'reference-face'],
  ['reference-face', 'opposite-edge'],
  ['opposite-face', 'opposite-edge'],
] as const)(
  'the start of a groove in the %s is at the reference end, whichever way its faces run',
  async (face, from) => {
    const found = await air(withGroove(rail, { ...inEdge, face, from, stop: { start: 40 } }));
    expect(found.box.min[0]).toBeCloseTo(40, 2);
    expect(found.box.max[0]).toBeCloseTo(600, 2);
  },
);

test('a rebate has no wall along its fence', async () => {
  const found = await air(
    withGroove(rail, {
      ...inEdge,
      face: 'opposite-face',
      from: 'opposite-edge',
      distance: 0,
      width: 8,
      depth: 12,
    }),
  );
  expect(found.box.min.map((at) => Math.round(at * 1000) / 1000)).toEqual([0, 62, 8]);
  expect(found.volume).toBeCloseTo(8 * 12 * 600, 3);
  expect(Math.abs(found.left - found.expected.volume)).toBeLessThan(found.expected.allowance);
});

test('a groove through a mitred board ends in both mitres', async () => {
  const mitred = makeBoard({
    id: 'mitred',
    blank: { length: 600, width: 70, thickness: 20 },
    outline: polygon([
      { x: 0, y: 0 },
      { x: 600, y: 0 },
      { x: 530, y: 70 },
      { x: 70, y: 70 },
    ]),
  });
  const found = await air(withGroove(mitred, { ...inEdge, face: 'opposite-edge' }));
  // the edge is 460 long, ten below it 480
  expect(found.volume).toBeCloseTo(6 * 10 * 470, 2);
  expect(Math.abs(found.left - found.expected.volume)).toBeLessThan(found.expected.allowance);
});

test.each([
  ['a width of 0', { width: 0 }, /its width is 0 mm; it must be more than 0/],
  ['more depth than wood', { depth: 70 }, /it is 70 mm deep, and the wood is only 70 mm/],
  [
    'a place off the edge',
    { distance: 15 },
    /reaches from 15 mm to 21 mm off the reference-face, and the reference-edge ends at 20 mm/,
  ],
  [
    'a fence on the face across',
    { from: 'opposite-edge' },
    /no fence on the opposite-edge guides a cutter in the reference-edge/,
  ],
  ['a face that is not there', { from: 'top' }, /there is no top: name one of reference-face/],
  [
    'stops that meet',
    { stop: { start: 300, end: 295 } },
    /its stops leave 5 mm of it; they must leave at least 12 mm/,
  ],
] as const)('a groove with %s is refused', (_, wrong, told) => {
  const spec = { ...inEdge, ...wrong } as GrooveSpec;
  expect(() => withGroove(rail, spec)).toThrow(BoardError);
  expect(() => withGroove(rail, spec)).toThrow(told);
});

test('two grooves of one board need two names', () => {
  expect(() => withGroove(withGroove(rail, inEdge), inEdge)).toThrow(
    /has that name: give it an id of its own/,
  );
});

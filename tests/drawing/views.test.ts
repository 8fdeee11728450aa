import { afterAll, expect, test } from 'vitest';
import { type Board, makeBoard } from '../../src/board/index.js';
import { lookingFrom, VIEW_FRAMES, type View, type ViewLine, viewOf } from '../../src/drawing/index.js';
import { frame } from '../../src/frame/index.js';
import { boardBody, featureEdges, startKernel, stockBody } from '../../src/solid/index.js';

const kernel = await startKernel();
afterAll(() => kernel.dispose());

function seen(board: Board, lean = 0) {
  const own = kernel.keep(boardBody(kernel, board, kernel.keep(stockBody(kernel, board))));
  return { id: board.id, solid: featureEdges(kernel.keep(own.rotate([0, lean, 0]))) };
}

const runOf = (view: View, line: ViewLine['line']): number =>
  view.lines
    .filter((one) => one.line === line)
    .flatMap(({ points }) =>
      points.slice(1).map(([x, y], i) => Math.hypot(x - points[i]![0], y - points[i]![1])),
    )
    .reduce((sum, run) => sum + run, 0);

function extent(view: View) {
  const points = view.lines.flatMap((line) => line.points);
  const of = (axis: 0 | 1) =>
    Math.max(...points.map((p) => p[axis])) - Math.min(...points.map((p) => p[axis]));
  return { width: of(0), height: of(1) };
}

const box = makeBoard({ id: 'box', blank: { length: 300, width: 120, thickness: 20 } });

test.each([
  ['front', 300, 20],
  ['right', 120, 20],
  ['top', 300, 120],
  ['bottom', 300, 120],
] as const)('a plain board from the %s is a rectangle and hides nothing beside it', (name, width, height) => {
  const view = viewOf([seen(box)], VIEW_FRAMES[name], { hidden: true });
  expect(extent(view).width).toBeCloseTo(width, 3);
  expect(extent(view).height).toBeCloseTo(height, 3);
  expect(runOf(view, 'visible')).toBeCloseTo(2 * (width + height), 3);
  expect(runOf(view, 'hidden')).toBe(0);
});

test('an isometric board shows nine edges and hides three, all shortened by the square root of two thirds', () => {
  const view = viewOf([seen(box)], VIEW_FRAMES.isometric, { hidden: true });
  const short = Math.sqrt(2 / 3);
  expect(runOf(view, 'visible')).toBeCloseTo(3 * (300 + 120 + 20) * short, 2);
  // a hidden edge begins where it is 0.01 mm behind the faces beside it
  expect(Math.abs(runOf(view, 'hidden') - (300 + 120 + 20) * short)).toBeLessThan(0.06);
});

test('a board seen along any direction has the extent of its three edges together', () => {
  const direction = [3, -2, 5] as const;
  const view = lookingFrom(direction);
  const { width, height } = extent(viewOf([seen(box)], view, { hidden: false }));
  const along = (axis: readonly [number, number, number]) =>
    300 * Math.abs(axis[0]) + 120 * Math.abs(axis[1]) + 20 * Math.abs(axis[2]);
  expect(width).toBeCloseTo(along(view.x), 3);
  expect(height).toBeCloseTo(along(view.y), 3);
});

const slotted: Board = {
  ...box,
  id: 'slotted',
  slots: [
    {
      id: 'slot',
      face: 'opposite-face',
      at: frame([150, 60, 20], [0, 0, 1], [1, 0, 0]),
      width: 10,
      length: 60,
      depth: 'through',
    },
  ],
};

test('an obround hole is seen whole from above, and from the side as its two hidden ends', () => {
  const above = viewOf([seen(slotted)], VIEW_FRAMES.top, { hidden: true });
  // two straight sides of 50 and a circle of 10, less the facets' shortfall
  const obround = 2 * 50 + Math.PI * 10;
  expect(Math.abs(runOf(above, 'visible') - 2 * 420 - obround)).toBeLessThan(0.03);
  expect(runOf(above, 'hidden')).toBeLessThan(0.01);
  const front = viewOf([seen(slotted)], VIEW_FRAMES.front, { hidden: true });
  expect(runOf(front, 'visible')).toBeCloseTo(2 * 320, 3);
  expect(runOf(front, 'hidden')).toBeCloseTo(2 * 20, 2);
  const side = viewOf([seen(slotted)], VIEW_FRAMES.right, { hidden: true });
  const dashes = side.lines.filter(({ line }) => line === 'hidden').map(({ points }) => points[0]![0]);
  expect(dashes.toSorted((a, b) => a - b).map((y) => Number(y.toFixed(3)))).toEqual([55, 65]);
});

test('the arc of a hidden end is one dashed line, so that its dashes run on', () => {
  const blind = { ...slotted, slots: slotted.slots.map((slot) => ({ ...slot, depth: 8 })) };
  const below = viewOf([seen(blind)], VIEW_FRAMES.bottom, { hidden: true });
  expect(below.lines.filter(({ line }) => line === 'hidden')).toHaveLength(1);
});

test('a board raked by 10° keeps its outline, turned', () => {
  const view = viewOf([seen(box, -10)], VIEW_FRAMES.front, { hidden: true });
  const [c, s] = [Math.cos(Math.PI / 18), Math.sin(Math.PI / 18)];
  expect(extent(view).width).toBeCloseTo(300 * c + 20 * s, 3);
  expect(extent(view).height).toBeCloseTo(300 * s + 20 * c, 3);
  expect(runOf(view, 'visible')).toBeCloseTo(2 * 320, 3);
});

test('an axis is drawn where no wood hides it', () => {
  // through the middle of the board from 50 above to 50 below, seen from the front and a little from above
  const wires = [{ id: 'axis', from: [150, 60, 70] as const, to: [150, 60, -50] as const }];
  const front = viewOf([seen(box)], VIEW_FRAMES.front, { hidden: false, wires });
  expect(runOf(front, 'centre')).toBeCloseTo(100, 3);
  const open = viewOf([seen(slotted)], VIEW_FRAMES.front, { hidden: false, wires });
  expect(runOf(open, 'centre')).toBeCloseTo(100, 3);
});

import { describe, expect, test } from 'vitest';
import { assemble, type Design } from '../../src/assembly/index.js';
import { type BoardSpec, type Hole, makeBoard, type Slot } from '../../src/board/index.js';
import { frame, WORLD } from '../../src/frame/index.js';
import { circle, polygon, rectangle } from '../../src/profile/index.js';
import { codes, findings } from './sample-design.js';

const alone = (more: Partial<BoardSpec>, cutter = 8): Design =>
  assemble({
    name: 'plate',
    title: 'Plate',
    cutter,
    boards: [
      {
        board: makeBoard({ id: 'plate', blank: { length: 200, width: 120, thickness: 18 }, ...more }),
        place: WORLD,
      },
    ],
  });
const onTop = (x: number, y: number) => frame([x, y, 18], [0, 0, 1], [1, 0, 0]);
const hole = (y: number, more: Partial<Hole> = {}): Hole => ({
  id: 'h1',
  face: 'opposite-face',
  at: onTop(100, y),
  diameter: 8,
  depth: 'through',
  ...more,
});
const slot = (y: number, more: Partial<Slot> = {}): Slot => ({
  id: 's1',
  face: 'opposite-face',
  at: onTop(100, y),
  width: 9,
  length: 80,
  depth: 'through',
  ...more,
});
const told = async (design: Design) =>
  (await findings(design)).map(({ code, level, measured }) => [
    code,
    level,
    Math.round(measured * 100) / 100,
  ]);

describe('bridges', () => {
  // a slot of 9 at y leaves y − 4.5 to the reference edge
  test.each([
    [10.1, []],
    [9.9, [['bridge-thin', 'warning', 9.9]]],
    [5.1, [['bridge-thin', 'warning', 5.1]]],
    [4.9, [['bridge-thin', 'error', 4.9]]],
  ])('%f mm beside a slot', async (bridge, expected) => {
    expect(await told(alone({ slots: [slot(bridge + 4.5)] }))).toEqual(expected);
  });

  test.each([
    [3.1, []],
    [2.9, [['bridge-thin', 'warning', 2.9]]],
    [1.6, [['bridge-thin', 'warning', 1.6]]],
    [1.4, [['bridge-thin', 'error', 1.4]]],
  ])('%f mm beside a hole', async (bridge, expected) => {
    expect(await told(alone({ holes: [hole(bridge + 4)] }))).toEqual(expected);
    // and to its counterbore, which is wider
    const counterbore = { diameter: 18, depth: 7 };
    expect(await told(alone({ holes: [hole(bridge + 9, { counterbore })] }))).toEqual(expected);
  });

  test('the open end of a slot is no bridge, its far side is', async () => {
    const open = (y: number) => alone({ slots: [slot(y, { at: onTop(180, y), openAt: 'end' })] });
    expect(await told(open(60))).toEqual([]);
    expect(await told(open(4.5 + 4))).toEqual([['bridge-thin', 'error', 4]]);
  });

  test('the floor of a blind hole counts', async () => {
    expect(await told(alone({ holes: [hole(60, { depth: 16 })] }))).toEqual([['bridge-thin', 'warning', 2]]);
  });

  test('a hole 0.1 mm over the edge of the board breaks out and the wood is missing', async () => {
    const found = await findings(alone({ holes: [hole(3.9)] }));
    expect(found.map(({ code }) => code)).toEqual(['bridge-thin', 'volume-differs']);
    expect(found[0]!.message).toBe('hole h1 in plate breaks out of the wood or meets another cavity');
  });
});

describe('volumes', () => {
  const two = (apart: number) =>
    alone({ holes: [hole(60), hole(60, { id: 'h2', at: onTop(100 + apart, 60) })] });

  test('two holes beside each other take what both take', async () => {
    expect(await codes(two(12))).toEqual([]);
  });

  test('two holes that meet take less than their data say', async () => {
    const found = await findings(two(6));
    const volume = found.find(({ code }) => code === 'volume-differs')!;
    // the lens two circles of radius 4 share, 6 apart: 2 r² acos(d / 2r) − d/2 √(4 r² − d²), times 18
    const lens = 2 * 16 * Math.acos(6 / 8) - 3 * Math.sqrt(64 - 36);
    expect(volume.measured).toBeCloseTo(lens * 18, -1);
    expect(new Set(found.map(({ code }) => code))).toEqual(new Set(['bridge-thin', 'volume-differs']));
  });
});

describe('corners', () => {
  const opening = (radius: number) =>
    alone({
      openings: [
        {
          id: 'hand',
          outline: polygon([
            { x: 60, y: 40, radius },
            { x: 140, y: 40, radius },
            { x: 140, y: 80, radius },
            { x: 60, y: 80, radius },
          ]),
        },
      ],
    });

  test('an inside corner of the cutter’s radius can be cut, a tighter one is told four times with its radius', async () => {
    expect(await codes(opening(4))).toEqual([]);
    expect(await codes(opening(4.1))).toEqual([]);
    expect(await told(opening(3.9))).toEqual(Array(4).fill(['corner-too-tight', 'warning', 3.9]));
  });

  test('outside corners may be sharp', async () => {
    expect(await codes(alone({ outline: rectangle({ length: 200, width: 120 }) }))).toEqual([]);
  });

  test('a round opening as large as the cutter is no corner', async () => {
    expect(
      await codes(
        alone({ openings: [{ id: 'hole', outline: circle({ diameter: 8.1, centre: [100, 60] }) }] }),
      ),
    ).toEqual([]);
  });
});

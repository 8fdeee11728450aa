import { expect, test } from 'vitest';
import { makeBoard, tightTemplateCorners } from '../../src/board/index.js';
import { polygon, rectangle } from '../../src/profile/index.js';
import { disc, sampleBoard } from '../drawing/sample-board.js';

test('a cutter of twice the corner radius just fits into the grip, a thicker one does not', () => {
  expect(tightTemplateCorners(sampleBoard, { cutter: 20 })).toEqual([]);
  const found = tightTemplateCorners(sampleBoard, { cutter: 22 });
  expect(found).toHaveLength(4);
  for (const corner of found) {
    expect(corner).toMatchObject({
      radius: expect.closeTo(10, 9),
      needed: 11,
      line: 'grip',
      because: 'cutter',
    });
  }
});

test('a square opening has four sharp corners no cutter reaches', () => {
  const board = makeBoard({
    id: 'panel',
    blank: { length: 200, width: 100, thickness: 9 },
    openings: [{ id: 'window', outline: rectangle({ x: 50, y: 20, length: 60, width: 40 }) }],
  });
  const found = tightTemplateCorners(board, { cutter: 6 });
  expect(found.map((corner) => [...corner.at, corner.radius]).sort()).toEqual([
    [110, 20, 0],
    [110, 60, 0],
    [50, 20, 0],
    [50, 60, 0],
  ]);
});

test('an inner corner of the outline is found, its outer corners are not', () => {
  const notched = makeBoard({
    id: 'bracket',
    blank: { length: 100, width: 100, thickness: 9 },
    outline: polygon([
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 40 },
      { x: 40, y: 40, radius: 5 },
      { x: 40, y: 100 },
      { x: 0, y: 100 },
    ]),
  });
  expect(tightTemplateCorners(notched, { cutter: 12 })).toEqual([
    expect.objectContaining({ radius: expect.closeTo(5, 9), needed: 6, line: 'outline', because: 'cutter' }),
  ]);
  expect(tightTemplateCorners(notched, { cutter: 10 })).toEqual([]);
});

test('a bush standing 5 mm off rounds a 3 mm outer corner too much', () => {
  const board = makeBoard({
    id: 'block',
    blank: { length: 100, width: 60, thickness: 9 },
    outline: polygon([
      { x: 0, y: 0, radius: 3 },
      { x: 100, y: 0, radius: 6 },
      { x: 100, y: 60 },
      { x: 0, y: 60 },
    ]),
  });
  expect(tightTemplateCorners(board, { cutter: 10, bush: 20 })).toEqual([
    expect.objectContaining({ radius: expect.closeTo(3, 9), needed: 5, line: 'outline', because: 'bush' }),
  ]);
});

test('a disc has no tight corner', () => {
  expect(tightTemplateCorners(disc, { cutter: 25, bush: 40 })).toEqual([]);
});

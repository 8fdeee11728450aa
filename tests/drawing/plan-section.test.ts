import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { DrawnFigure } from '../../src/drawing/flow/index.js';
import { emptyPlace } from '../../src/drawing/plan/map-place.js';
import { AREA, section } from '../../src/drawing/plan/plan-section.js';
import { boxesOverlap, entitiesBox, letters, path, type SheetEntity } from '../../src/drawing/sheet/index.js';
import { paragraph } from '../../src/shop/index.js';
import { seed } from '../properties/seed.js';

const map = (width: number, height: number): DrawnFigure => ({
  kind: 'drawn',
  said: 'A map.',
  width,
  height,
  draw: ([x, y]) => [
    path(
      'visible',
      [
        [x, y],
        [x + width, y],
        [x + width, y + height],
        [x, y + height],
      ],
      true,
    ),
  ],
});

const rows = (count: number) =>
  Array.from({ length: count }, (_, i) => paragraph(`row ${i}${' and so on'.repeat(9)}`));

const isMap = (one: SheetEntity): boolean => one.tag?.role === 'figure' && one.tag.said === 'A map.';

test('every page has the map: a full one keeps its foot free for the smallest, and its rows go on to the next', () => {
  const maps = [map(70, 50), map(40, 30)];
  const { drafts } = section('t', 'x', '', rows(60), () => maps);
  expect(drafts.length).toBe(2);
  for (const { entities } of drafts) {
    const [drawn, ...others] = entities.filter(isMap);
    expect(others).toEqual([]);
    expect(
      entities.filter((one) => !isMap(one) && boxesOverlap(entitiesBox([one]), entitiesBox([drawn!]))),
    ).toEqual([]);
  }
  const said = drafts.flatMap(({ entities }) =>
    entities.flatMap((one) => (one.kind === 'text' ? [one.text] : [])),
  );
  expect(said).toEqual(rows(60).map(({ text }) => text));
});

test('a map that would cost a page more is left out of the full page', () => {
  const pages = (count: number) => section('t', 'x', '', rows(count)).shares.length;
  let count = 60;
  while (pages(count + 1) === 2) count += 1;
  const { drafts } = section('t', 'x', '', rows(count), () => [map(40, 30)]);
  expect(drafts.map(({ entities }) => entities.some(isMap))).toEqual([false, false]);
});

test('the largest map that finds an empty place stands there, low and to the right, beside what is narrow', () => {
  const wide = (fromTop: number, width: number) =>
    path('visible', [
      [AREA.minX, AREA.maxY - fromTop],
      [AREA.minX + width, AREA.maxY - fromTop],
      [AREA.minX + width, AREA.minY],
    ]);
  const place = (...drawn: readonly SheetEntity[]) => emptyPlace(drawn, AREA, [map(70, 50), map(40, 30)]);
  const [all] = [AREA.maxX - AREA.minX];
  expect(place()).toMatchObject({ figure: { width: 70 }, at: [AREA.maxX - 70, AREA.minY] });
  expect(place(wide(20, 90))!.figure.width).toBe(70);
  expect(place(wide(20, all - 50))).toMatchObject({ figure: { width: 40 }, at: [AREA.maxX - 40, AREA.minY] });
  expect(place(wide(20, all - 41))).toBeUndefined();
  // nothing stands between the parts of a drawing
  const tag = { role: 'figure', said: 'a board' } as const;
  const apart = [0, 1].map((side) => ({
    ...letters([side ? AREA.maxX - 5 : AREA.minX, side ? AREA.maxY - 5 : AREA.minY + 1], 'a'),
    tag,
  }));
  expect(place(...apart)).toBeUndefined();
});

test('the place is the one found square by square: the first empty one from the foot, from the right', () => {
  const [wide, high] = [60, 80];
  const area = { minX: 15, minY: 20, maxX: 15 + wide, maxY: 20 + high };
  // tenths of a millimetre, and some beyond the edges
  const from = (most: number) => fc.integer({ min: -50, max: 10 * most }).map((tenths) => tenths / 10);
  const box = fc.tuple(from(wide), from(high), from(wide / 2), from(high / 2));
  const size = (most: number) => fc.oneof(fc.integer({ min: 50, max: 400 }), fc.constant(10 * most));
  fc.assert(
    fc.property(fc.array(box, { maxLength: 8 }), size(wide), size(high), (boxes, w, h) => {
      const figure = map(w / 10, h / 10);
      const drawn = boxes.map(([x, y, width, height]) => ({
        from: [15 + x, 20 + y] as const,
        to: [15 + x + Math.max(0.2, width), 20 + y + Math.max(0.2, height)] as const,
      }));
      const found = emptyPlace(
        drawn.map(({ from, to }) => path('visible', [from, to])),
        area,
        [figure],
      );
      const isInk = (column: number, row: number) =>
        drawn.some(
          ({ from, to }) =>
            from[0] < 15 + column + 1 && to[0] > 15 + column && from[1] < 20 + row + 1 && to[1] > 20 + row,
        );
      const [columns, rows] = [Math.ceil(figure.width), Math.ceil(figure.height)];
      const isEmpty = (left: number, foot: number) => {
        // two squares of air all round, as far as the page goes
        for (let column = Math.max(0, left - 2); column < Math.min(wide, left + columns + 2); column += 1)
          for (let row = Math.max(0, foot - 2); row < Math.min(high, foot + rows + 2); row += 1)
            if (isInk(column, row)) return false;
        return true;
      };
      const places: [number, number][] = [];
      for (let foot = 0; foot + rows <= high; foot += 1)
        for (let left = wide - columns; left >= 0; left -= 1) places.push([left, foot]);
      const first = places.find(([left, foot]) => isEmpty(left, foot));
      if (!first) return found === undefined;
      const [left, foot] = first;
      expect(found?.at[0]).toBeCloseTo(15 + left + columns - figure.width, 9);
      expect(found?.at[1]).toBeCloseTo(20 + foot, 9);
      return true;
    }),
    seed(200),
  );
});

import { expect, test } from 'vitest';
import type { DrawnFigure } from '../../src/drawing/flow/index.js';
import { emptyPlace } from '../../src/drawing/plan/map-place.js';
import { AREA, section } from '../../src/drawing/plan/plan-section.js';
import { boxesOverlap, entitiesBox, letters, path, type SheetEntity } from '../../src/drawing/sheet/index.js';
import { paragraph } from '../../src/shop/index.js';

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

import { expect, test } from 'vitest';
import type { DrawnFigure } from '../../src/drawing/flow/index.js';
import { ROOM, section } from '../../src/drawing/plan/plan-section.js';
import { letters } from '../../src/drawing/sheet/index.js';
import { paragraph } from '../../src/shop/index.js';

const map: DrawnFigure = {
  kind: 'drawn',
  said: 'A map.',
  width: 40,
  height: 30,
  draw: (at) => [letters(at, 'map')],
};

test('the map of the piece stands at the foot of a page that has room for it, and on no full one', () => {
  const row = (i: number) => paragraph(`row ${i}`);
  const { drafts, shares } = section(
    't',
    'x',
    '',
    Array.from({ length: 60 }, (_, i) => row(i)),
    map,
  );
  const mapped = drafts.map(({ entities }) =>
    entities.some((one) => one.kind === 'text' && one.text === 'map'),
  );
  expect(drafts.length).toBe(2);
  expect(mapped).toEqual(shares.map((share) => ROOM.height * (1 - share) >= 32));
  expect(mapped).toEqual([false, true]);
  const [words] = drafts[1]!.entities.filter((one) => one.kind === 'text' && one.text === 'map');
  expect(words!.tag).toEqual({ role: 'figure', said: 'A map.' });
});

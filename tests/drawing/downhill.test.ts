// The rule, told by carvers and router users alike (common practice, no source): cut from where the board is wide to where
// it is narrow, so that the fibres under the cutter are held by those below them.

import { expect, test } from 'vitest';
import { makeBoard } from '../../src/board/index.js';
import { downhillOf, templatePlaces } from '../../src/drawing/index.js';
import { frame } from '../../src/frame/index.js';
import { circle, distanceTo, distanceToSegment, polygon, rectangle } from '../../src/profile/index.js';

const board = (outline: ReturnType<typeof polygon>, more = {}) =>
  makeBoard({ id: 'part', blank: { length: 300, width: 100, thickness: 20 }, outline, ...more });

test('a tapered edge is routed towards the narrow end', () => {
  const taper = board(
    polygon([
      { x: 0, y: 0 },
      { x: 300, y: 0 },
      { x: 300, y: 60 },
      { x: 0, y: 100 },
    ]),
  );
  const arrows = downhillOf(taper);
  expect(arrows.length).toBeGreaterThan(1);
  for (const { direction, at } of arrows) {
    expect(direction[0]).toBeGreaterThan(0.9);
    expect(at[1]).toBeGreaterThan(59);
  }
});

test('the wood over a round hole is routed towards where it is narrowest, half of the hole against the feed', () => {
  const arch = board(
    polygon([
      { x: 0, y: 0 },
      { x: 300, y: 0 },
      { x: 300, y: 100 },
      { x: 0, y: 100 },
    ]),
    { openings: [{ id: 'round', outline: circle({ diameter: 60, centre: [150, 50] }) }] },
  );
  const arrows = downhillOf(arch);
  // the wood above the hole is narrowest over its middle: towards there
  const upper = arrows.filter(({ at }) => at[1] > 55);
  expect(upper.length).toBeGreaterThanOrEqual(2);
  for (const { at, direction } of upper) expect(direction[0] * (150 - at[0])).toBeGreaterThan(0);
  // half of a round hole goes with the feed, half against it
  expect(arrows.filter(({ withFeed }) => withFeed)).toHaveLength(arrows.length / 2);
});

test('at 100 places of an arc the fibres run out of the wood behind the cutter, not ahead of it', () => {
  const disc = makeBoard({
    id: 'disc',
    blank: { length: 2000, width: 2000, thickness: 12 },
    outline: circle({ diameter: 2000, centre: [1000, 1000] }),
  });
  const arrows = downhillOf(disc);
  expect(arrows.length).toBeGreaterThan(40);
  for (const { at, direction } of arrows) {
    // one step on along the edge, then back against the cut along the grain: still wood on the way there
    const on = [at[0] + direction[0] * 20, at[1] + direction[1] * 20] as const;
    const back = [on[0] - Math.sign(direction[0]) * 25, on[1]] as const;
    expect(Math.hypot(back[0] - 1000, back[1] - 1000)).toBeLessThan(1000);
  }
});

test('edges along the grain and end grain have no downhill', () => {
  expect(downhillOf(board(rectangle({ length: 300, width: 100 })))).toEqual([]);
});

test('pins touch the reference edge and the reference end, and no pin or screw comes near a cutter', () => {
  const cutter = 12;
  const part = board(
    polygon([
      { x: 0, y: 0 },
      { x: 300, y: 0 },
      { x: 300, y: 60, radius: 20 },
      { x: 200, y: 100 },
      { x: 0, y: 100 },
    ]),
    {
      holes: [
        {
          id: 'far',
          face: 'opposite-face',
          at: frame([80, 50, 20], [0, 0, 1], [1, 0, 0]),
          diameter: 8,
          depth: 'through',
        },
        {
          id: 'near',
          face: 'opposite-face',
          at: frame([285, 55, 20], [0, 0, 1], [1, 0, 0]),
          diameter: 8,
          depth: 'through',
        },
        {
          id: 'small',
          face: 'opposite-face',
          at: frame([120, 50, 20], [0, 0, 1], [1, 0, 0]),
          diameter: 3,
          depth: 'through',
        },
      ],
    },
  );
  const places = templatePlaces(part, cutter);
  const pins = places.filter(({ kind }) => kind === 'pin');
  expect(pins).toHaveLength(3);
  for (const { at, diameter } of pins) expect(distanceTo(part.outline, at)).toBeCloseTo(diameter / 2, 9);
  // routed is what does not lie on the blank: the end from (300, 60) up to the slope's top; corners are rounded inwards
  const slope = { kind: 'line', from: [300, 60], to: [200, 100] } as const;
  for (const { at, diameter } of places)
    expect(distanceToSegment(slope, at)).toBeGreaterThan(cutter + diameter / 2);
  expect(places.filter(({ kind }) => kind === 'screw').map(({ where }) => where)).toEqual([
    'in hole H1, before it is drilled',
  ]);
});

test('a board without a straight reference edge gets no pin there', () => {
  const disc = makeBoard({
    id: 'disc',
    blank: { length: 100, width: 100, thickness: 12 },
    outline: circle({ diameter: 100, centre: [50, 50] }),
  });
  expect(templatePlaces(disc, 8)).toEqual([]);
});

import { expect, test } from 'vitest';
import { jigWith } from './at-hand.js';

test('the default jig grips 20 to 87 mm, and each rail reaches half of that', () => {
  // the figures of the jig's own test: slots 136 long less a 9 mm bolt and a 40 mm rail
  const jig = jigWith();
  expect(jig.grip.least).toBeCloseTo(20, 9);
  expect(jig.grip.most).toBeCloseTo(87, 9);
  for (const rail of [jig.near, jig.far]) {
    expect(rail.most).toBeCloseTo(43.5, 9);
    expect(rail.drawn).toBeCloseTo((20 + 87) / 4, 9);
    expect(rail.height).toBe(45);
    expect(rail.length).toBe(369);
    // the jig's design keeps a turning cutter 2 mm off its rails
    expect(rail.cutterAir).toBe(2);
  }
  expect(jig.plate).toEqual({ id: 'plate', along: 269, across: 186, thickness: 12 });
  expect(jig.slidingZ).toBe(0);
});

test('a rail moves with its own bolts, washers and knobs and with nothing else', () => {
  const { near, far, design } = jigWith();
  expect(near.id).toBe('near-rail');
  expect(near.moves).toHaveLength(7);
  expect(near.moves.every((id) => id.startsWith('near-rail'))).toBe(true);
  expect(far.moves.every((id) => id.startsWith('far-rail'))).toBe(true);
  const moving = [...near.moves, ...far.moves];
  const still = [...design.boards.map(({ board }) => board.id), ...design.hardware.map(({ id }) => id)];
  expect(still.filter((id) => !moving.includes(id)).sort()).toEqual(
    ['cutter', 'plate', 'router-base', 'screw-1', 'screw-2', 'screw-3', 'screw-4'].sort(),
  );
});

test('a jig asked to grip 30 mm more reaches 15 mm farther with each rail', () => {
  expect(jigWith({ workMax: 90 }).far.most - jigWith({ workMax: 60 }).far.most).toBeCloseTo(15, 9);
});

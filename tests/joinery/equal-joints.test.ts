import { expect, test } from 'vitest';
import { frame } from '../../src/frame/index.js';
import { carded } from '../shop/made.js';
import { mitredFrame } from './mitred-frame.js';

/** Rails whose mitred seat has room for a whole number of half millimetres: 12.7 and 13 of depth kept, seen over 45°. */
const exactly = (long: number): number => (long + 2 * 12.7 + 13) / Math.SQRT2;

const stands = [0, 0.3, 1.1].map((tilt) =>
  frame([13, 7, 5], [Math.sin(tilt), 0, Math.cos(tilt)], [Math.cos(tilt), 0, -Math.sin(tilt)]),
);

test('four equal mitred corners have equal mortises, though their sizes fall on a step of the rounding', () => {
  for (const stand of stands) {
    for (const long of [45, 50, 52.5, 55]) {
      const { boards } = mitredFrame(exactly(long), { stand });
      const sizes = boards.flatMap(({ board }) =>
        board.mortises.map((mortise) => [mortise.length, mortise.depth].join()),
      );
      expect([...new Set(sizes)]).toEqual([`${long},13`]);
    }
  }
});

test('and one card', () => {
  for (const stand of stands) {
    const { cards } = carded(mitredFrame(exactly(52.5), { stand }));
    expect(cards.map(({ cuts }) => cuts.length)).toEqual([8]);
  }
});

import { expect, test } from 'vitest';
import { carded, made } from '../shop/made.js';

const steps = (given = {}) => made('jig', given).putTogether!;
const telling = (words: string) => steps().filter(({ what }) => what.includes(words));

test('a test slot too far from the near wall comes to the middle when the rails are moved as told', () => {
  const [told] = telling('shallow slot');
  const words =
    /the near rail (closer to|farther from) the cutter and the far rail (closer to|farther from) it when the near wall is the (thicker|thinner)/;
  const [, near, far, wall] = words.exec(told!.what)!;
  // offcut 30 thick, a slot of 10: the cutter stands at 0, its walls are what the rails leave beside it
  const before = wall === 'thicker' ? { near: 17, far: 13 } : { near: 13, far: 17 };
  const half = Math.abs(before.near - before.far) / 2;
  const after = {
    near: before.near + (near === 'closer to' ? -half : half),
    far: before.far + (far === 'closer to' ? -half : half),
  };
  expect(after.near - 5).toBe(after.far - 5);
  expect(after.near + after.far).toBe(30);
});

test('half the plate as measured from the pin is what the stops of every card with rails are set by', () => {
  const half = telling('a straight pin')[0]!.figures.find(({ name }) => name === 'to each end')!.value;
  const cards = carded(made('stool')).cards.filter(({ nearRail }) => nearRail !== undefined);
  expect(cards.length).toBeGreaterThan(0);
  for (const { stopDistance, mortiseLength, cutter } of cards)
    expect(stopDistance).toBeCloseTo(mortiseLength / 2 + half - cutter / 2, 9);
});

test('countersunk screws seat themselves: nothing is told to be shifted in their play', () => {
  for (const { what } of steps()) expect(what).not.toMatch(/shift .* in the play/);
});

import { expect, test } from 'vitest';
import { boxesOverlap, strokesOf, textBox } from '../../src/drawing/index.js';
import { cardFigure } from '../../src/drawing/set-up/card-figure.js';
import { setUpSection } from '../../src/drawing/set-up/set-up-section.js';
import { entitiesBox } from '../../src/drawing/sheet/entity-box.js';
import { pageOf } from '../../src/drawing/sheet/page.js';
import type { SetupCard } from '../../src/shop/index.js';
import { carded, made } from '../shop/made.js';

const { minX, maxX } = pageOf('A4', 'portrait').live;

test.each([
  ['raked', {}],
  ['steeply raked', { rake: 20 }],
  ['of two treads', { treads: 2 }],
  ['of a wide tread', { treadDepth: 450, treadTenons: 1 }],
])('every set-up of a stool %s is drawn inside an upright page, its dimensions too', (_, given) => {
  const { cards } = carded(made('stool', given));
  expect(cards.length).toBeGreaterThan(2);
  for (const card of cards)
    for (const units of ['mm', 'in', 'dual'] as const) {
      const figure = cardFigure(card, units);
      // a title block's frame leaves 4 mm on both sides
      expect(figure.width, card.id).toBeLessThan(maxX - minX - 8);
      const drawn = entitiesBox(figure.draw([0, 0]));
      expect(drawn.minX, card.id).toBeCloseTo(0, 6);
      expect(drawn.maxX, card.id).toBeCloseTo(figure.width, 6);
    }
});

/** What the dimensions of a card's section say, by what they measure. */
const toldOf = (card: SetupCard, units: 'mm' | 'in' = 'mm') =>
  setUpSection(card, units, 70)
    .draw([0, 0])
    .flatMap((one) => (one.kind === 'dimension' ? [[one.what, one.value] as const] : []));

test('the section of each card dimensions what a rule can touch: rail to flank of the cutter, wedges, the block and the depth', () => {
  const { cards } = carded(made('stool', { rake: 12 }));
  expect(cards.some(({ nearRail }) => nearRail?.wedge)).toBe(true);
  for (const card of cards) {
    const told = toldOf(card);
    const sum = (from: RegExp, to: RegExp) => {
      const first = told.findIndex(([what]) => from.test(what));
      const last = told.findIndex(([what], i) => i >= first && to.test(what));
      return told.slice(first, last + 1).reduce((total, [, value]) => total + value, 0);
    };
    if (card.nearRail)
      expect(sum(/^face of the near rail/, /to near flank/)).toBeCloseTo(
        card.nearRail.distance - card.cutter / 2,
        6,
      );
    if (card.farRail)
      expect(sum(/^far flank/, /to face of the far rail/)).toBeCloseTo(
        card.farRail.distance - card.cutter / 2,
        6,
      );
    if (card.nearRail?.wedge)
      expect(
        told.find(([what]) => what === 'face of the near rail to near side of the work')![1],
      ).toBeCloseTo(card.nearRail.wedge.thicknessAtMouth, 3);
    // the wall that is left is what the test cut is judged by
    if (card.testCut.nearWall !== undefined && card.slotWidth === card.cutter)
      expect(told.find(([what]) => /to near flank/.test(what))![1]).toBeCloseTo(card.testCut.nearWall, 3);
    expect(told.find(([what]) => what.endsWith('to depth block'))![1]).toBeCloseTo(card.depth, 6);
    expect(told.find(([what]) => what.endsWith('to depth'))![1]).toBeCloseTo(card.depth, 6);
  }
});

test('a wedge in the section is as steep as the wedge, thick end where its card says', () => {
  const { cards } = carded(made('stool', { rake: 12 }));
  const card = cards.find(({ nearRail }) => nearRail?.wedge)!;
  const { wedge } = card.nearRail!;
  const drawn = setUpSection(card, 'mm', 70).draw([0, 0]);
  const hatch = drawn.find((one) => one.kind === 'hatch' && one.part === 'wedge');
  if (hatch?.kind !== 'hatch') throw new Error('no wedge is drawn');
  const [top, side, foot] = hatch.loops[0]!;
  const lean = Math.atan2(Math.abs(foot![0] - side![0]), Math.abs(foot![1] - side![1]));
  expect((lean * 180) / Math.PI).toBeCloseTo(wedge!.angleDeg, 6);
  const [above, below] = [side![0] - top![0], foot![0] - top![0]];
  expect(above > below).toBe(wedge!.thickEnd === 'up');
});

test.each([
  ['raked', {}],
  ['of two treads', { treads: 2 }],
])('the section of every set-up of a stool %s keeps its room, and no words lie on others', (_, given) => {
  for (const card of carded(made('stool', given)).cards)
    for (const units of ['mm', 'in', 'dual'] as const) {
      const figure = setUpSection(card, units, 70);
      expect(figure.width, `${card.id} ${units}`).toBeLessThan(units === 'dual' ? 82 : 74);
      const boxes = strokesOf(figure.draw([0, 0])).flatMap((one) =>
        one.kind === 'text' ? [textBox(one)] : [],
      );
      const clashes = boxes.flatMap((one, i) =>
        boxes.slice(0, i).filter((other) => boxesOverlap(one, other)),
      );
      expect(clashes, `${card.id} ${units}`).toEqual([]);
    }
});

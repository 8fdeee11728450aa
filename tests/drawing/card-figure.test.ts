import { expect, test } from 'vitest';
import { cardFigure } from '../../src/drawing/figure/card-figure.js';
import { entitiesBox } from '../../src/drawing/sheet/entity-box.js';
import { pageOf } from '../../src/drawing/sheet/page.js';
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

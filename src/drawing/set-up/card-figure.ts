import type { Vec2 } from '../../frame/index.js';
import type { SetupCard } from '../../shop/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { type DrawingUnits, entitiesBox, type SheetEntity } from '../sheet/index.js';
import { setUpDimensions } from './set-up-dimensions.js';
import { type OnSheet, setUpShapes } from './set-up-shapes.js';
import { RAIL, setUpSize } from './set-up-size.js';

/** The largest set-up, mm on the sheet, and the largest figure with its dimensions beside it: an upright page's width. */
const MOST: readonly [width: number, height: number] = [46, 22];
const WIDEST = 54;

/**
 * A set-up seen from above, to scale, the person at the lower side: mortise, work, rails or guide, stops, and what is set.
 */
export function cardFigure(card: SetupCard, units: DrawingUnits): DrawnFigure {
  const { near, far, reach } = setUpSize(card);
  const factor = Math.min(MOST[0] / (2 * reach), MOST[1] / (near + far + 2 * RAIL));
  const figure = figureAt(card, units, factor);
  // what stands beside the set-up keeps its size, so the set-up gives way
  const over = figure.width - WIDEST;
  return over <= 0 ? figure : figureAt(card, units, factor - over / (2 * reach));
}

/** @param factor the scale: mm on the sheet for each mm */
function figureAt(card: SetupCard, units: DrawingUnits, factor: number): DrawnFigure {
  const size = setUpSize(card);
  const draw = (from: Vec2): readonly SheetEntity[] => {
    const on: OnSheet = { at: (x, y) => [from[0] + factor * x, from[1] + factor * y], factor };
    return [...setUpShapes(card, size, on), ...setUpDimensions(card, size, on, units)];
  };
  const box = entitiesBox(draw([0, 0]));
  return {
    kind: 'drawn',
    said: `The set-up of card ${card.id} from above, you at its lower side: mortise, work, rails or guide and stops, with what is set; the table tells the same figures.`,
    width: box.maxX - box.minX,
    height: box.maxY - box.minY + 2,
    draw: ([x, y]) => draw([x - box.minX, y - box.minY]),
  };
}

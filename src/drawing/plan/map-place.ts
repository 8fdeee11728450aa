import type { Vec2 } from '../../frame/index.js';
import type { DrawnFigure } from '../flow/index.js';
import { type Box, entitiesBox, type SheetEntity, type Tag } from '../sheet/index.js';

/** Side of a cell, and air round a map, mm. */
const [CELL, AIR] = [1, 1.5];

/** The first of some figures, the largest first, that finds an empty place on a page, as low and as far right as can be. */
export function emptyPlace(
  entities: readonly SheetEntity[],
  area: Box,
  figures: readonly DrawnFigure[],
): { readonly figure: DrawnFigure; readonly at: Vec2 } | undefined {
  const columns = Math.floor((area.maxX - area.minX) / CELL);
  const rows = Math.floor((area.maxY - area.minY) / CELL);
  const taken = takenBlocks(entities, area, columns, rows);
  const air = Math.ceil(AIR / CELL);
  for (const figure of figures) {
    const [wide, high] = [Math.ceil(figure.width / CELL), Math.ceil(figure.height / CELL)];
    for (let row = 0; row + high <= rows; row += 1) {
      const beside = taken.filter(({ low, top }) => low < row + high + air && top > row - air);
      let column = columns - wide;
      const isInTheWay = ({ left, right }: Block) => left < column + wide + air && right > column - air;
      // past what is in the way, to its left
      for (;;) {
        const one = beside.find(isInTheWay);
        if (!one) break;
        column = one.left - wide - air;
      }
      if (column >= 0)
        return {
          figure,
          at: [area.maxX - (columns - column) * CELL + wide * CELL - figure.width, area.minY + row * CELL],
        };
    }
  }
  return undefined;
}

/** Whole cells, from the left and the foot of an area; `right` and `top` are the first beyond. */
interface Block {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly top: number;
}

/** What words and tables take up, and the whole of every figure: nothing else stands between its parts. */
function takenBlocks(
  entities: readonly SheetEntity[],
  area: Box,
  columns: number,
  rows: number,
): readonly Block[] {
  const figures = new Map<Tag, SheetEntity[]>();
  const boxes: Box[] = [];
  for (const one of entities) {
    const own = one.tag && figures.get(one.tag);
    if (own) own.push(one);
    else if (one.tag?.role === 'figure') figures.set(one.tag, [one]);
    else boxes.push(entitiesBox([one]));
  }
  const at = (value: number, low: number, most: number) => Math.min(most, Math.max(0, (value - low) / CELL));
  return [...boxes, ...[...figures.values()].map(entitiesBox)]
    .map((box) => ({
      left: Math.floor(at(box.minX, area.minX, columns)),
      right: Math.ceil(at(box.maxX, area.minX, columns)),
      low: Math.floor(at(box.minY, area.minY, rows)),
      top: Math.ceil(at(box.maxY, area.minY, rows)),
    }))
    .filter(({ left, right, low, top }) => left < right && low < top);
}

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
  const taken = takenBefore(takenCells(entities, area, columns, rows), columns, rows);
  const air = Math.ceil(AIR / CELL);
  for (const figure of figures) {
    const [wide, high] = [Math.ceil(figure.width / CELL), Math.ceil(figure.height / CELL)];
    for (let row = 0; row + high <= rows; row += 1)
      for (let column = columns - wide; column >= 0; column -= 1)
        if (
          taken(
            Math.max(0, column - air),
            Math.max(0, row - air),
            Math.min(columns, column + wide + air),
            Math.min(rows, row + high + air),
          ) === 0
        )
          return {
            figure,
            at: [area.maxX - (columns - column) * CELL + wide * CELL - figure.width, area.minY + row * CELL],
          };
  }
  return undefined;
}

/** Cells under words and tables, and under the whole of every figure: nothing else stands between its parts. */
function takenCells(
  entities: readonly SheetEntity[],
  area: Box,
  columns: number,
  rows: number,
): readonly boolean[] {
  const cells = new Array<boolean>(columns * rows).fill(false);
  const figures = new Map<Tag, SheetEntity[]>();
  const boxes: Box[] = [];
  for (const one of entities) {
    const own = one.tag && figures.get(one.tag);
    if (own) own.push(one);
    else if (one.tag?.role === 'figure') figures.set(one.tag, [one]);
    else boxes.push(entitiesBox([one]));
  }
  for (const box of [...boxes, ...[...figures.values()].map(entitiesBox)]) {
    const at = (value: number, low: number, most: number) =>
      Math.min(most, Math.max(0, (value - low) / CELL));
    const [left, right] = [at(box.minX, area.minX, columns), at(box.maxX, area.minX, columns)];
    const [low, high] = [at(box.minY, area.minY, rows), at(box.maxY, area.minY, rows)];
    for (let row = Math.floor(low); row < Math.ceil(high); row += 1)
      cells.fill(true, row * columns + Math.floor(left), row * columns + Math.ceil(right));
  }
  return cells;
}

/** How many cells of a block are taken, by sums from the corner. */
function takenBefore(cells: readonly boolean[], columns: number, rows: number) {
  const sums = new Uint32Array((columns + 1) * (rows + 1));
  const of = (column: number, row: number) => sums[row * (columns + 1) + column]!;
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1)
      sums[(row + 1) * (columns + 1) + column + 1] =
        of(column, row + 1) + of(column + 1, row) - of(column, row) + (cells[row * columns + column] ? 1 : 0);
  return (left: number, low: number, right: number, high: number): number =>
    of(right, high) - of(left, high) - of(right, low) + of(left, low);
}

import { onceForEach } from '../../once.js';
import { drawnTable, type WrappedRow, type WrappedTable, wrappedTable } from '../sheet/index.js';
import type { FlowBlock } from './drawn-figure.js';
import type { Filling } from './filling.js';
import { BELOW } from './set-text.js';

type TableBlock = Extract<FlowBlock, { readonly kind: 'table' }>;

/** By the room: pages are filled more than once until a map stands on each. */
const known = onceForEach((_: TableBlock) => new Map<number, WrappedTable>());

/** A table broken to fit a room. */
export function wrapped(table: TableBlock, room: number): WrappedTable {
  const rooms = known(table);
  const found = rooms.get(room) ?? wrappedTable([table.head, ...table.rows], room);
  rooms.set(room, found);
  return found;
}

/** A table, its head repeated on every page it runs on to; no page begins or ends with one row of it alone. */
export function setTable(on: Filling, table: TableBlock): void {
  const { widths, rows } = wrapped(table, on.room);
  const head = rows[0]!;
  let left = rows.slice(1);
  do {
    let count = fitting(on, head, left);
    if (left.length - count === 1) count -= 1;
    if (count < Math.min(2, left.length)) {
      if (!on.isFresh) {
        on.turn();
        continue;
      }
      // a row higher than a page has to go somewhere
      count = Math.max(count, 1);
    }
    const part = [head, ...left.slice(0, count)];
    on.put(drawnTable([on.left, on.y], part, widths));
    on.y -= tall(part) + BELOW + 1;
    left = left.slice(count);
    if (left.length > 0) on.turn();
  } while (left.length > 0);
}

const tall = (rows: readonly WrappedRow[]): number => rows.reduce((sum, { height }) => sum + height, 0);

/** How many rows the page still holds below a head. */
function fitting(on: Filling, head: WrappedRow, rows: readonly WrappedRow[]): number {
  let height = head.height;
  const over = rows.findIndex((row) => {
    height += row.height;
    return !on.holds(height);
  });
  return over < 0 ? rows.length : over;
}

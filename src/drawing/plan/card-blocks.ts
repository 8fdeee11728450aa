import type { SetupCard } from '../../shop/index.js';
import { besideText, type DrawnFigure, type FlowBlock, figureRows, heightOf } from '../flow/index.js';
import { setUpSection } from '../set-up/index.js';
import { type DrawingUnits, wrappedTable } from '../sheet/index.js';
import { ROOM } from './plan-section.js';

/** Most that the left half of a card takes, width of its section, least height of its picture, and between drawings, mm on the sheet. */
const [MOST, SECTION, LOW, GAP] = [116, 46, 40, 4];

/**
 * A set-up card on a page: from above and in section side by side, its mortises below them, on the right of both its picture; then what
 * is set.
 *
 * @param picture of the set-up, in a room
 */
export function cardBlocks(
  blocks: readonly FlowBlock[],
  card: SetupCard,
  units: DrawingUnits,
  picture: (room: { readonly width: number; readonly height: number }) => DrawnFigure | undefined,
): readonly FlowBlock[] {
  const at = blocks.findIndex(({ kind }) => kind === 'drawn');
  const above = blocks[at];
  if (above?.kind !== 'drawn') return blocks;
  const section = setUpSection(card, units, SECTION);
  const set = blocks.findIndex((block) => block.kind === 'table' && block.head[0] === 'set');
  const tables = blocks.slice(at + 1, set);
  const wide = tables.map((one) =>
    one.kind === 'table' ? sum(wrappedTable([one.head, ...one.rows], MOST).widths) : 0,
  );
  const width = Math.min(MOST, Math.max(above.width + GAP + section.width, ...wide) + 0.1);
  const left = [...figureRows([above, section], width, GAP), ...tables];
  const height = Math.max(LOW, heightOf(left, width));
  const shown = picture({ width: ROOM.width - width - GAP, height });
  return [
    ...blocks.slice(0, at),
    ...(shown ? besideText(left, shown, ROOM.width) : left),
    ...blocks.slice(set),
  ];
}

const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0);

import type { Vec2 } from '../../frame/index.js';
import { type Words, wordsOf } from '../../shop/index.js';
import {
  type Box,
  disc,
  drawnTable,
  letters,
  path,
  type SheetEntity,
  SMALL,
  type Stroke,
  type TextHeight,
  type WrappedRow,
  wrappedTable,
  wrappedText,
} from '../sheet/index.js';
import type { FlowBlock } from './drawn-figure.js';

/** Text, tables and figures set down on pages. */
export interface Flowed {
  readonly pages: readonly (readonly SheetEntity[])[];
  /** Headings with the page they stand on, counted from 0. */
  readonly headings: readonly { readonly text: string; readonly level: 1 | 2; readonly page: number }[];
}

/** From row to row of a text, and below a block, mm. */
const LEADING = 4.3;
const BELOW = 2.6;

const HEADING: Readonly<
  Record<1 | 2, { readonly height: TextHeight; readonly above: number; readonly below: number }>
> = {
  1: { height: 5, above: 0, below: 4 },
  2: { height: 3.5, above: 2, below: 3 },
};

/** A heading is not left alone at the foot of a page: this much must follow it, mm. */
const AFTER_HEADING = 18;

const INDENT = 4;

/** Fills pages with blocks, top to bottom; a table runs on with its head repeated, everything else stays whole. */
export function flow(blocks: readonly FlowBlock[], area: Box): Flowed {
  const room = area.maxX - area.minX;
  const pages: SheetEntity[][] = [[]];
  const headings: { text: string; level: 1 | 2; page: number }[] = [];
  let y = area.maxY;
  const isFresh = () => pages.at(-1)!.length === 0;
  const turn = () => {
    if (isFresh()) return;
    pages.push([]);
    y = area.maxY;
  };
  const take = (height: number) => {
    if (y - height < area.minY - 1e-6) turn();
    y -= height;
  };
  const put = (entities: readonly SheetEntity[]) => pages.at(-1)!.push(...entities);
  const rows = (text: Words, indent: number): readonly Stroke[] => {
    const found: Stroke[] = [];
    const bold = typeof text !== 'string';
    for (const line of wrappedText(wordsOf(text), room - indent, SMALL, bold)) {
      if (y - LEADING < area.minY) {
        put(found.splice(0));
        turn();
      }
      y -= LEADING;
      found.push(letters([area.minX + indent, y + LEADING - SMALL - 0.5], line, bold ? { bold } : {}));
    }
    y -= BELOW - 1;
    return found;
  };
  /** Height of the figure after a block, with the line of words between them; undefined when none follows. */
  const figureAfter = (i: number): number | undefined => {
    const [next, last] = [blocks[i + 1], blocks[i + 2]];
    if (next?.kind === 'drawn') return next.height;
    return next?.kind === 'paragraph' && last?.kind === 'drawn' ? last.height + LEADING + BELOW : undefined;
  };
  blocks.forEach((block, i) => {
    switch (block.kind) {
      case 'new page':
        turn();
        return;
      case 'heading': {
        const { height, above, below } = HEADING[block.level];
        if (y - above - height - below - (figureAfter(i) ?? AFTER_HEADING) < area.minY) turn();
        const lines = wrappedText(block.text, room, height, true);
        for (const line of lines) {
          take((isFresh() ? 0 : above) + height);
          put([letters([area.minX, y], line, { height, bold: true })]);
          y -= 1;
        }
        headings.push({ text: block.text, level: block.level, page: pages.length - 1 });
        y -= below - 1;
        return;
      }
      case 'paragraph': {
        // a line that only leads to a figure goes with it
        const next = blocks[i + 1];
        if (next?.kind === 'drawn' && y - LEADING - BELOW - next.height < area.minY) turn();
        put(rows(block.text, 0));
        return;
      }
      case 'cautions':
        for (const text of block.items) item(text, warning);
        return;
      case 'list':
        for (const text of block.items) item(text, bullet);
        return;
      case 'drawn':
        take(block.height);
        put(block.draw([area.minX + (room - block.width) / 2, y]));
        y -= BELOW;
        return;
      case 'table':
        runOn(wrappedTable([block.head, ...block.rows], room));
        return;
      default:
        block satisfies never;
    }
  });
  return { pages: pages.filter((page) => page.length > 0), headings };

  function item(text: Words, sign: (at: Vec2) => Stroke): void {
    if (y - LEADING < area.minY) turn();
    put([sign([area.minX + 1.5, y - SMALL + 0.8])]);
    put(rows(text, INDENT));
  }

  function runOn({ widths, rows: all }: ReturnType<typeof wrappedTable>): void {
    const [head, ...body] = all;
    let left: readonly WrappedRow[] = body;
    do {
      let height = head!.height;
      let count = 0;
      while (count < left.length && y - height - left[count]!.height >= area.minY) {
        height += left[count]!.height;
        count += 1;
      }
      // a row higher than a page has to go somewhere
      if (count === 0 && left.length > 0) {
        if (!isFresh()) {
          turn();
          continue;
        }
        height += left[0]!.height;
        count = 1;
      }
      put([drawnTable([area.minX, y], [head!, ...left.slice(0, count)], widths)]);
      y -= height + BELOW + 1;
      left = left.slice(count);
      if (left.length > 0) turn();
    } while (left.length > 0);
  }
}

const bullet = (at: Vec2): Stroke => ({ ...disc('dimension', at, 0.5), fill: 'ink' });

/** A triangle, as on signs that warn. */
const warning = ([x, y]: Vec2): Stroke => ({
  ...path(
    'dimension',
    [
      [x - 1.1, y - 0.8],
      [x + 1.1, y - 0.8],
      [x, y + 1.1],
    ],
    true,
  ),
  fill: 'ink',
});

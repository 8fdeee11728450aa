import {
  type Box,
  disc,
  drawnTable,
  letters,
  type SheetEntity,
  SMALL,
  type Stroke,
  type TextHeight,
  type WrappedRow,
  wrappedTable,
  wrappedText,
} from '../sheet/index.js';
import type { Block } from './flow-block.js';

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
export function flow(blocks: readonly Block[], area: Box): Flowed {
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
  const rows = (text: string, indent: number, bold: boolean): readonly Stroke[] => {
    const found: Stroke[] = [];
    for (const line of wrappedText(plain(text), room - indent, SMALL, bold)) {
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
    if (next?.kind === 'figure') return next.height;
    return next?.kind === 'paragraph' && last?.kind === 'figure' ? last.height + LEADING + BELOW : undefined;
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
        if (next?.kind === 'figure' && y - LEADING - BELOW - next.height < area.minY) turn();
        put(rows(block.text, 0, block.bold ?? /^\*\*.*\*\*$/.test(block.text)));
        return;
      }
      case 'bullet': {
        if (y - LEADING < area.minY) turn();
        const dot: Stroke = { ...disc('dimension', [area.minX + 1.5, y - SMALL + 0.8], 0.5), fill: 'ink' };
        put([dot]);
        put(rows(block.text, INDENT, false));
        return;
      }
      case 'figure':
        take(block.height);
        put(block.draw([area.minX + (room - block.width) / 2, y]));
        y -= BELOW;
        return;
      case 'table':
        runOn(wrappedTable(block.rows, room));
    }
  });
  return { pages: pages.filter((page) => page.length > 0), headings };

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

/** Text without the signs that only Markdown reads. */
const plain = (text: string): string => text.replaceAll('**', '');

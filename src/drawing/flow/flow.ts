import type { Box, SheetEntity } from '../sheet/index.js';
import type { FlowBlock } from './drawn-figure.js';
import { Filling } from './filling.js';
import { setTable } from './set-table.js';
import { BELOW, bullet, LEADING, setHeading, setItems, setText, warning } from './set-text.js';

/** Text, tables and figures set down on pages. */
export interface Flowed {
  readonly pages: readonly (readonly SheetEntity[])[];
  /** Headings with the page they stand on, counted from 0. */
  readonly headings: readonly { readonly text: string; readonly level: 1 | 2; readonly page: number }[];
}

/** A heading is not left alone at the foot of a page: this much must follow it, mm. */
const AFTER_HEADING = 18;

/** Fills pages with blocks, top to bottom; a table runs on with its head repeated, everything else stays whole. */
export function flow(blocks: readonly FlowBlock[], area: Box): Flowed {
  const on = new Filling(area);
  const headings: Flowed['headings'][number][] = [];
  blocks.forEach((block, i) => {
    switch (block.kind) {
      case 'new page':
        on.turn();
        return;
      case 'heading':
        setHeading(on, block.text, block.level, figureAfter(blocks, i) ?? AFTER_HEADING);
        headings.push({ text: block.text, level: block.level, page: on.pages.length - 1 });
        return;
      case 'paragraph': {
        // a line that only leads to a figure goes with it
        const next = blocks[i + 1];
        if (next?.kind === 'drawn' && !on.holds(LEADING + BELOW + next.height)) on.turn();
        setText(on, block.text);
        return;
      }
      case 'cautions':
        setItems(on, block.items, warning);
        return;
      case 'list':
        setItems(on, block.items, bullet);
        return;
      case 'drawn':
        on.take(block.height);
        on.put(...block.draw([on.left + (on.room - block.width) / 2, on.y]));
        on.y -= BELOW;
        return;
      case 'table':
        setTable(on, [block.head, ...block.rows]);
        return;
      default:
        block satisfies never;
    }
  });
  return { pages: on.pages.filter((page) => page.length > 0), headings };
}

/** Height of the figure after a block, with the line of words between them; undefined when none follows. */
function figureAfter(blocks: readonly FlowBlock[], i: number): number | undefined {
  const [next, last] = [blocks[i + 1], blocks[i + 2]];
  if (next?.kind === 'drawn') return next.height;
  return next?.kind === 'paragraph' && last?.kind === 'drawn' ? last.height + LEADING + BELOW : undefined;
}

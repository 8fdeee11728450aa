import type { Box, SheetEntity } from '../sheet/index.js';
import { type FlowBlock, told, type Whole } from './drawn-figure.js';
import { Filling } from './filling.js';
import { setTable, wrapped } from './set-table.js';
import { BELOW, bullet, LEADING, setHeading, setItems, setText, warning } from './set-text.js';

/** Text, tables and figures set down on pages. */
export interface Flowed {
  readonly pages: readonly (readonly SheetEntity[])[];
  /** How much of each page is taken, from 0 to 1. */
  readonly shares: readonly number[];
  /** Headings with the page they stand on, counted from 0. */
  readonly headings: readonly { readonly text: string; readonly level: 1 | 2; readonly page: number }[];
  /** Ids of the boards each page is about. */
  readonly about: readonly ReadonlySet<string>[];
}

/** A heading is not left alone at the foot of a page: this much must follow it, mm. */
const AFTER_HEADING = 18;

/** A page is not left with less than this on it for the sake of what should stand together. */
const HALF = 0.52;

/**
 * Fills pages with blocks, top to bottom; a table runs on with its head repeated, everything else stays whole.
 *
 * @param kept what is kept free at the foot of a page, by its number from 0, mm
 */
export function flow(blocks: readonly FlowBlock[], area: Box, kept?: ReadonlyMap<number, number>): Flowed {
  const on = new Filling(area, kept);
  const headings: Flowed['headings'][number][] = [];
  setBlocks(on, blocks, headings);
  const { pages, shares, share } = on;
  const about = pages.map((_, i) => on.about.get(i) ?? new Set<string>());
  return on.isFresh && pages.length > 1
    ? { pages: pages.slice(0, -1), shares, headings, about }
    : { pages: pages.filter((page) => page.length > 0), shares: [...shares, share], headings, about };
}

/** Blocks set one below the other in a room of a width, from 0 to the right and down; mm. */
export function stacked(
  blocks: readonly FlowBlock[],
  width: number,
): { readonly entities: readonly SheetEntity[]; readonly height: number } {
  const on = new Filling({ minX: 0, maxX: width, minY: -1e6, maxY: 0 });
  setBlocks(on, blocks, []);
  return { entities: on.pages.flat(), height: -on.y };
}

/** How high blocks stand, one below the other, in a room of a width, mm. */
export const heightOf = (blocks: readonly FlowBlock[], width: number): number =>
  stacked(blocks, width).height;

/** Blocks that are kept on one page where they fit one. */
export const together = (
  blocks: readonly FlowBlock[],
  width: number,
  about: readonly string[] = [],
): Whole => ({
  kind: 'whole',
  about,
  fit: (height) => (heightOf(blocks, width) <= height ? blocks : undefined),
});

function setBlocks(on: Filling, given: readonly FlowBlock[], headings: Flowed['headings'][number][]): void {
  const blocks = [...given];
  for (let i = 0; i < blocks.length; i += 1) {
    blocks.splice(i, 0, ...blocks.splice(nextOf(on, blocks, i), 1));
    setBlock(on, blocks, i, headings);
  }
}

/** Of free blocks that follow each other the first that fits the rest of the page. */
function nextOf(on: Filling, blocks: readonly FlowBlock[], from: number): number {
  const isFree = (i: number) => {
    const block = blocks[i];
    return block?.kind === 'whole' && block.free === true ? block : undefined;
  };
  for (let i = from, block = isFree(i); block; i += 1, block = isFree(i))
    if (block.fit(on.below - 1)) return i;
  return from;
}

function setBlock(
  on: Filling,
  blocks: readonly FlowBlock[],
  i: number,
  headings: Flowed['headings'][number][],
): void {
  const block = blocks[i]!;
  switch (block.kind) {
    case 'new page':
      if (on.share > HALF) on.turn();
      return;
    case 'heading':
      setHeading(on, block.text, block.level, figureAfter(blocks, i) ?? tableAfter(blocks[i + 1], on.room));
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
      on.put(...told(block, [on.left + (on.room - block.width) / 2, on.y]));
      on.y -= BELOW;
      return;
    case 'table':
      setTable(on, block);
      return;
    case 'whole':
      setWhole(on, block, headings);
      return;
    default:
      block satisfies never;
  }
}

function setWhole(
  on: Filling,
  { fit: sized, about = [] }: Whole,
  headings: Flowed['headings'][number][],
): void {
  let made = sized(on.below - 1);
  if (!made) {
    // what fits no page at all runs on
    const most = 1e4;
    if (on.isFresh) made = sized(most);
    else {
      made = sized(on.next);
      if (made && on.share > HALF) on.turn();
      made ??= sized(most);
    }
  }
  const before = headings.length;
  setBlocks(on, made ?? [], headings);
  const last = on.pages.length - 1;
  for (let page = headings[before]?.page ?? last; page <= last; page += 1) on.tell(page, about);
}

/** Height of a table's head and first rows, which do not part from the heading before them; three rows stay together. */
function tableAfter(next: FlowBlock | undefined, room: number): number {
  if (next?.kind !== 'table') return AFTER_HEADING;
  const { rows } = wrapped(next, room);
  return Math.max(
    AFTER_HEADING,
    rows.slice(0, rows.length === 4 ? 4 : 3).reduce((sum, { height }) => sum + height, 1),
  );
}

/** Height of the figure after a block, with the line of words between them; undefined when none follows. */
function figureAfter(blocks: readonly FlowBlock[], i: number): number | undefined {
  const [next, last] = [blocks[i + 1], blocks[i + 2]];
  if (next?.kind === 'drawn') return next.height;
  return next?.kind === 'paragraph' && last?.kind === 'drawn' ? last.height + LEADING + BELOW : undefined;
}

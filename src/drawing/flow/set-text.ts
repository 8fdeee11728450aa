import type { Vec2 } from '../../frame/index.js';
import { type Words, wordsOf } from '../../shop/index.js';
import {
  BODY,
  disc,
  letters,
  path,
  type Stroke,
  type Tag,
  type TextHeight,
  tagged,
  wrappedText,
} from '../sheet/index.js';
import type { Filling } from './filling.js';

/** From row to row of a text, and below a block, mm. */
export const LEADING = 3.5;
export const BELOW = 2.2;

const HEADING: Readonly<
  Record<1 | 2, { readonly height: TextHeight; readonly above: number; readonly below: number }>
> = {
  1: { height: 5, above: 0, below: 4 },
  2: { height: 3.5, above: 2, below: 3 },
};

const INDENT = 4;

/** @param follows height of what must stand on the same page below it, mm */
export function setHeading(on: Filling, text: string, level: 1 | 2, follows: number): void {
  const { height, above, below } = HEADING[level];
  if (!on.holds(above + height + below + follows)) on.turn();
  const tag: Tag = { role: 'heading', level };
  // rows of one heading keep clear of each other's tails
  let over = above;
  for (const line of wrappedText(text, on.room, height, true)) {
    on.take((on.isFresh ? 0 : over) + height);
    over = height * 0.35;
    on.put(letters([on.left, on.y], line, { height, bold: true, tag }));
    on.y -= 1;
  }
  on.y -= below - 1;
}

/** Rows of a text, on the next page where this one is full; no row of several stands alone on a page. */
export function setText(on: Filling, text: Words, tag: Tag = { role: 'paragraph' }, indent = 0): void {
  const bold = typeof text !== 'string';
  const rows = rowsOf(on, text, indent);
  for (const [i, line] of rows.entries()) {
    if (!on.holds(LEADING * rowsTogether(rows.length, i))) on.turn();
    on.y -= LEADING;
    on.put(
      letters([on.left + indent, on.y + LEADING - BODY - 0.5], line, {
        height: BODY,
        tag,
        ...(bold ? { bold } : {}),
      }),
    );
  }
  on.y -= BELOW - 1;
}

const rowsOf = (on: Filling, text: Words, indent: number): readonly string[] =>
  wrappedText(wordsOf(text), on.room - indent, BODY, typeof text !== 'string');

/** How many rows of a text must stand on one page from a row on: three are not parted, of more never less than two. */
const rowsTogether = (rows: number, from: number): number =>
  from === 0 ? (rows <= 3 ? rows : 2) : from === rows - 2 ? 2 : 1;

/** Texts with a sign before each. */
export function setItems(on: Filling, items: readonly Words[], sign: (at: Vec2) => Stroke): void {
  for (const text of items) {
    if (!on.holds(LEADING * rowsTogether(rowsOf(on, text, INDENT).length, 0))) on.turn();
    const tag: Tag = { role: 'item', list: items };
    on.put(...tagged([sign([on.left + 1.5, on.y - BODY + 0.8])], tag));
    setText(on, text, tag, INDENT);
  }
}

export const bullet = (at: Vec2): Stroke => ({ ...disc('dimension', at, 0.5), fill: 'ink' });

/** A triangle, as on signs that warn. */
export const warning = ([x, y]: Vec2): Stroke => ({
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

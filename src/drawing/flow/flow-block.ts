import type { Vec2 } from '../../frame/index.js';
import type { SheetEntity } from '../sheet/index.js';

/** A piece of a text page; pages are filled with these from top to bottom. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string; readonly level: 1 | 2 }
  | { readonly kind: 'paragraph'; readonly text: string; readonly bold?: boolean }
  | { readonly kind: 'bullet'; readonly text: string }
  /** The first row is the head, repeated on every page the table runs on to. */
  | { readonly kind: 'table'; readonly rows: readonly (readonly string[])[] }
  | FigureBlock
  | { readonly kind: 'new page' };

/** A drawing among the text. */
export interface FigureBlock {
  readonly kind: 'figure';
  /** mm on the sheet. */
  readonly width: number;
  readonly height: number;
  /** @param at where its lower left corner comes to lie */
  readonly draw: (at: Vec2) => readonly SheetEntity[];
}

export const heading = (text: string, level: 1 | 2 = 2): Block => ({ kind: 'heading', text, level });
export const paragraph = (text: string): Block => ({ kind: 'paragraph', text });
export const bullet = (text: string): Block => ({ kind: 'bullet', text });
export const tableBlock = (rows: readonly (readonly string[])[]): Block => ({ kind: 'table', rows });

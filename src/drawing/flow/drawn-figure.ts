import type { Vec2 } from '../../frame/index.js';
import type { Block } from '../../shop/index.js';
import { type SheetEntity, tagged } from '../sheet/index.js';

/** A drawing of its own size among the text. */
export interface DrawnFigure {
  readonly kind: 'drawn';
  /** mm on the sheet. */
  readonly width: number;
  readonly height: number;
  /** A sentence in its place, for someone who does not see it. */
  readonly said: string;
  /** @param at where its lower left corner comes to lie */
  readonly draw: (at: Vec2) => readonly SheetEntity[];
}

/** Blocks that stand together on one page, and may be set smaller to do so. */
export interface Whole {
  readonly kind: 'whole';
  /** May stand before another that is free as well and does not fit the rest of a page. */
  readonly free?: boolean;
  /** Ids of the boards it tells about. */
  readonly about?: readonly string[];
  /** @returns the blocks no higher than a height, mm; undefined when they would have to be too small */
  readonly fit: (height: number) => readonly FlowBlock[] | undefined;
}

/** What pages are filled with: the blocks of a paper, each place of a figure taken by its drawing. */
export type FlowBlock = Exclude<Block, { readonly kind: 'figure' | 'bars' }> | DrawnFigure | Whole;

/** A drawing in its place, tagged with its sentence. */
export const told = ({ draw, said }: DrawnFigure, at: Vec2): readonly SheetEntity[] =>
  tagged(draw(at), { role: 'figure', said });

/** A rectangle on a sheet or a board: x along its length, y across, both from its reference corner. mm */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** A rectangular part to be cut. */
export interface PartToCut {
  readonly id: string;
  readonly length: number;
  readonly width: number;
  /** `along`: its length must lie along the stock's; `free`: it may be turned. */
  readonly grain: 'along' | 'free';
}

/** Stock of one size; as many pieces as wanted when the count is left out. */
export interface Stock {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly count?: number;
}

/** How the saw is used. mm */
export interface Sawing {
  readonly kerf: number;
  /** Taken off each end and each edge before anything is measured, kerf included. */
  readonly trim: { readonly ends: number; readonly edges: number };
  /** Which cuts come first: sheets are ripped first, lumber is cut to rough length first. */
  readonly first: Direction;
  /** Shortest piece the saw may be given: plans that keep to it are preferred. */
  readonly shortest?: number;
}

/** `rip`: along the stock's length; `crosscut`: across it. */
export type Direction = 'rip' | 'crosscut';

/** A part where it lies. */
export interface LaidPart extends Rect {
  readonly id: string;
  readonly turned: boolean;
}

/** What a cut leaves on one side. */
export type Outcome =
  | { readonly kind: 'part'; readonly id: string }
  | { readonly kind: 'piece'; readonly rect: Rect }
  | { readonly kind: 'offcut'; readonly id: string; readonly rect: Rect }
  | { readonly kind: 'trimming' }
  | { readonly kind: 'nothing' };

/** One cut from edge to edge of one piece. */
export interface Cut {
  readonly number: number;
  readonly piece: Rect;
  readonly direction: Direction;
  /** From the piece's lower (rip) or left (crosscut) edge to the near side of the kerf: the fence setting. */
  readonly at: number;
  /** Towards the reference corner, and beyond the kerf. */
  readonly near: Outcome;
  readonly far: Outcome;
}

/** One piece of stock with what is cut from it. */
export interface LaidStock {
  readonly stock: Stock;
  readonly usable: Rect;
  readonly parts: readonly LaidPart[];
  readonly cuts: readonly Cut[];
  readonly offcuts: readonly (Rect & { readonly id: string })[];
}

/** A part that fits no stock, and the least stock that would take it, trim included. */
export interface Unplaced {
  readonly part: PartToCut;
  /** `too small`: no stock is large enough; `used up`: all that is large enough is taken. */
  readonly because: 'too small' | 'used up';
  readonly needed: { readonly length: number; readonly width: number };
}

export interface CuttingPlan {
  readonly pieces: readonly LaidStock[];
  readonly unplaced: readonly Unplaced[];
}

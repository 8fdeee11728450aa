import type { Box } from './text-width.js';

/** Height of the row at the foot of a sheet, mm. */
export const BLOCK_HEIGHT = 8;

export type Paper = 'A4' | 'Letter';
export type Orientation = 'portrait' | 'landscape';

/** ISO 216 A4 and ANSI/ASME Y14.1 A, portrait, mm. */
const PAPERS: Readonly<Record<Paper, readonly [width: number, height: number]>> = {
  A4: [210, 297],
  Letter: [215.9, 279.4],
};

/** What both papers can print inside margins of 10 mm, portrait: sheets are laid out in it, so both papers show the same. */
const LIVE: readonly [number, number] = [190, 259.4];

/** A sheet of paper and the part of it that is drawn on, in the middle; mm. */
export interface Page {
  readonly paper: Paper;
  readonly width: number;
  readonly height: number;
  readonly live: Box;
}

export function pageOf(paper: Paper, orientation: Orientation): Page {
  const turn = ([a, b]: readonly [number, number]) =>
    (orientation === 'portrait' ? [a, b] : [b, a]) as [number, number];
  const [width, height] = turn(PAPERS[paper]);
  const [w, h] = turn(LIVE);
  const [minX, minY] = [(width - w) / 2, (height - h) / 2];
  return { paper, width, height, live: { minX, minY, maxX: minX + w, maxY: minY + h } };
}

/** Kept free inside the frame, mm. */
const INSET = 4;

/** What of a page is free inside the frame and above its foot. */
export const drawableOf = ({ live }: Page): Box => ({
  minX: live.minX + INSET,
  minY: live.minY + BLOCK_HEIGHT + INSET,
  maxX: live.maxX - INSET,
  maxY: live.maxY - INSET,
});

import type { FaceId } from '../board/index.js';

/** What a surface is for. */
export const USES = ['step', 'seat', 'table-top', 'shelf', 'none'] as const;

export type Use = (typeof USES)[number];

/** A surface of a board and what it is for; loads follow from it. */
export interface SurfaceUse {
  readonly board: string;
  readonly use: Use;
  /** The face that looks up the most when left out. */
  readonly face?: FaceId;
}

/** Who uses a piece. */
export interface User {
  /** Of the heaviest person, kg. */
  readonly kg: number;
  /** A child uses it too: openings and gaps are looked at for small fingers and heads. */
  readonly child: boolean;
}

/** An adult; 150 kg is the most a household step is made for: EN 14183, as quoted by trade pages. */
export const USUAL_USER: User = { kg: 150, child: false };

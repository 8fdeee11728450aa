import type { SetupCard } from '../../shop/index.js';

/** Drawn thickness of a rail and of a stop, mm at full size: their real one does not matter here. */
export const RAIL = 18;
export const STOP = 10;

/** Thickness of plate and base, mm at full size: their real ones do not matter here. */
export const PLATE = 12;
export const BASE = 8;

/** How far everything reaches from the cutter's centre, mm: towards the person and away, and to either side. */
export interface SetUpSize {
  /** Inner faces of the rails, or of what stands for them. */
  readonly near: number;
  readonly far: number;
  /** Outer faces of the rails. */
  readonly low: number;
  readonly high: number;
  readonly reach: number;
}

export function setUpSize(card: SetupCard): SetUpSize {
  const near = card.nearRail?.distance ?? card.guideOffset ?? 28;
  const far = card.farRail?.distance ?? card.guideOffset ?? 28;
  const reach = card.window
    ? Math.max(card.travelling.along / 2, card.mortiseLength)
    : card.stopDistance + STOP + 8;
  return { near, far, low: near + RAIL, high: far + RAIL, reach };
}

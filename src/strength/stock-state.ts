import type { Season } from '../movement/index.js';
import { combinedSlope } from '../statics/index.js';

/** What the strength of wood depends on beside its species. */
export interface StockState {
  /** The grain runs out by 1 in so many along the board. */
  readonly grainOneIn: number;
  /** The most moisture the wood comes to in use, %. */
  readonly moisture: number;
}

/** What a shop tells of its wood; whatever it does not is taken as usual. */
export interface StockTold {
  readonly moisture?: number;
  /** 1 in so many on the face of a board, and on its edge. */
  readonly grainOneIn?: number;
  readonly grainOneInOnEdge?: number;
}

/** Stock chosen for a piece that bears a person: its grain runs out by no more than 1 in this. Common practice, no source. */
export const STRAIGHT_GRAIN = 15;

/** Moisture at which the tables tell the strength of wood, %: what is drier is taken to bear no more. */
const TABLES = 12;

/** The stock of a shop where its pieces will stand. */
export function stockIn({ climate: { dampPercent } }: Season, told: StockTold = {}): StockState {
  const { grainOneIn = STRAIGHT_GRAIN, grainOneInOnEdge, moisture = Math.max(TABLES, dampPercent) } = told;
  const onEdge = grainOneInOnEdge === undefined ? 0 : 1 / grainOneInOnEdge;
  return { grainOneIn: 1 / combinedSlope(1 / grainOneIn, onEdge), moisture };
}

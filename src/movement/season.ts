import { type Climate, climate, climateNames } from '../tables/index.js';
import type { Cut } from './movement.js';

/** What the wood of a piece goes through, and how it was sawn. */
export interface Season {
  readonly climate: Climate;
  /** Moisture of the wood when it is glued, %. */
  readonly gluedAt: number;
  readonly cut: Cut;
}

/** Wood that has come to the middle of the climate it will stand in. Common practice, no source. */
export const seasonIn = (place: Climate, cut: Cut = 'flat', gluedAt?: number): Season => ({
  climate: place,
  gluedAt: gluedAt ?? (place.dryPercent + place.dampPercent) / 2,
  cut,
});

/** Where nobody says where a piece will stand: a heated room, and flat-sawn wood, which moves most. */
export const USUAL_SEASON: Season = seasonIn(climate(climateNames[0]));

/** Percentage points of moisture from the driest to the dampest of a year. */
export const swing = ({ climate: { dryPercent, dampPercent } }: Season): number => dampPercent - dryPercent;

/** How much the wood takes up from the day it was glued, and how much it loses, percentage points. */
export const rising = ({ climate: { dampPercent }, gluedAt }: Season): number =>
  Math.max(dampPercent - gluedAt, 0);
export const falling = ({ climate: { dryPercent }, gluedAt }: Season): number =>
  Math.max(gluedAt - dryPercent, 0);

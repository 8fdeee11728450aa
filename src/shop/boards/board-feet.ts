import { INCH } from '../../length/index.js';

/** A board foot: 144 cubic inches (a board 1 in × 12 in × 12 in), mm³. Common practice of the lumber trade in inches. */
const BOARD_FOOT = 144 * INCH ** 3;

/**
 * Board feet of a volume: thickness × width × length in inches over 144.
 *
 * @param volumeMm3 mm³
 * @example boardFeet(4 * 44.45 * 44.45 * 254) // 0.8507, four legs 1-3/4 × 1-3/4 × 10 in
 */
export const boardFeet = (volumeMm3: number): number => volumeMm3 / BOARD_FOOT;

/** A volume in the units it is sold in. */
export interface WoodVolume {
  readonly m3: number;
  readonly boardFeet: number;
}

/** @param volumeMm3 mm³ */
export const woodVolume = (volumeMm3: number): WoodVolume => ({
  m3: volumeMm3 * 1e-9,
  boardFeet: boardFeet(volumeMm3),
});

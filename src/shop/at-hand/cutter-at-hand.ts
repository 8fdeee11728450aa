import { SAME_CUTTER } from '../../tolerances.js';
import type { CutterAtHand, Shop } from './shop.js';

/** The cutter of the shop with a nominal diameter, mm; undefined when it has none. */
export const cutterAtHand = (shop: Shop, nominal: number): CutterAtHand | undefined =>
  shop.cutters.find((one) => Math.abs(one.nominal - nominal) < SAME_CUTTER);

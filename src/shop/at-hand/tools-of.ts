import type { Tools } from '../../model/index.js';
import { cutterDiameters } from '../../tables/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { toldBy } from './season-of.js';
import type { Shop } from './shop.js';

/** What a model may choose from: the shop's cutters by what is written on them, or the usual ones when it names none. */
export const toolsOf = (shop: Shop): Tools => {
  const { cutters } = shop;
  return {
    units: shop.measures,
    cutters: cutters.length > 0 ? cutters.map(({ nominal }) => nominal) : cutterDiameters(),
    deepest: (wanted) => {
      const same = cutters.filter(({ nominal }) => Math.abs(nominal - wanted) < SAME_POINT);
      const known = (same.length > 0 ? same : cutters).flatMap(({ cuttingLength }) => cuttingLength ?? []);
      return known.length > 0 ? Math.max(...known) : undefined;
    },
    wood: {
      season: toldBy(shop).season,
      ...(shop.wood?.tenons !== undefined && { tenonWood: shop.wood.tenons }),
    },
  };
};

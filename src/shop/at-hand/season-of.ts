import { equilibrium, type Season, seasonIn } from '../../movement/index.js';
import { onceForEach } from '../../once.js';
import { stockIn, type Told } from '../../strength/index.js';
import { type Climate, climate, climateNames } from '../../tables/index.js';
import type { PlaceTold, Shop } from './shop.js';

/** The season of a shop: its own air, or a climate of the table, the usual one when it names none. */
export const seasonOf = ({ place = {}, wood = {} }: Shop): Season =>
  seasonIn(ownClimate(place) ?? climate(place.climate ?? climateNames[0]), wood.sawn, wood.gluedAt);

/** What the four figures come to; undefined when one is missing. */
export function ownClimate(place: PlaceTold): Climate | undefined {
  const { dryCelsius, dryHumidity, dampCelsius, dampHumidity } = place;
  if (dryCelsius === undefined || dryHumidity === undefined) return undefined;
  if (dampCelsius === undefined || dampHumidity === undefined) return undefined;
  return {
    name: 'your own',
    help: 'the air told in the shop file',
    dryPercent: equilibrium(dryCelsius, dryHumidity / 100),
    dampPercent: equilibrium(dampCelsius, dampHumidity / 100),
    source: 'the air told in the shop file; Wood Handbook, FPL-GTR-190 (2010), eq. 4–5',
  };
}

/** What a shop tells of the place of its pieces and of joints made in it; one thing, by which work is known again. */
export const toldBy = onceForEach((shop: Shop): Told => {
  const season = seasonOf(shop);
  return {
    season,
    stock: stockIn(season, shop.wood),
    ...(shop.glue && { glue: shop.glue }),
    ...(shop.jointStiffness !== undefined && { jointStiffness: shop.jointStiffness }),
  };
});

import type { Shop } from '../../src/shop/index.js';

/** A shop that knows everything the stock papers ask; tests take away or change what they are about. */
export const aShop: Shop = {
  name: 'test shop',
  units: 'mm',
  measures: 'mm',
  router: { base: { shape: 'round', along: 150, across: 150 } },
  cutters: [{ nominal: 8, slotInFace: 8.06, slotInEnd: 8.02 }],
  bushes: [],
  jig: {},
  sawKerf: 3,
  sheets: [],
  lumber: [],
  roughAllowance: { length: 30, width: 8, thickness: 4 },
  shortest: { planer: 300, saw: 250 },
  clamps: [],
  paper: 'A4',
};

/** The shop without some of what it knows. */
export function without(...names: readonly (keyof Shop)[]): Shop {
  const left = Object.entries(aShop).filter(([name]) => !(names as readonly string[]).includes(name));
  return Object.fromEntries(left) as unknown as Shop;
}

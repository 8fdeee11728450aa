import type { Design } from '../../assembly/index.js';
import type { Units } from '../../length/index.js';
import { type Model, optionName } from '../../model/index.js';
import { jigOfShop, jigParameters } from './jig-of-shop.js';
import type { Shop } from './shop.js';

type Given = Readonly<Record<string, unknown>>;

/**
 * The shop's two-rail jig as a design, and what the model of a run is given: a run that makes that jig is given what the shop says of
 * it, what the person gave going first.
 *
 * @param units of bare numbers among the jig's parameters in the shop file
 * @param jig the jig's model
 * @throws InputError when the jig's parameters cannot be used
 */
export function withJig(
  shop: Shop,
  units: Units,
  jig: Model,
  asked: { readonly model: Model; readonly given: Given },
): { readonly jig: Design; readonly given: Given } {
  const own = asked.model === jig ? jigParameters(shop, jig, units) : {};
  const names = new Set(Object.keys(asked.given).map(optionName));
  return {
    jig: jigOfShop(shop, jig, units),
    given: {
      ...Object.fromEntries(Object.entries(own).filter(([name]) => !names.has(optionName(name)))),
      ...asked.given,
    },
  };
}

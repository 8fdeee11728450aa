import type { Design } from '../../assembly/index.js';
import type { Model } from '../../model/index.js';
import type { Shop } from './shop.js';
import { toolsOf } from './tools-of.js';

interface Built {
  readonly model: Model;
  readonly shop: Shop;
  readonly design: Design;
}

const latest = new WeakMap<object, Built>();

/**
 * The design that a model makes of values with the tools of a shop; the same one each time while the three are the same things,
 * so that nothing that follows from it is worked out twice.
 *
 * @throws TenonwrightError for values that do not go together
 */
export function designFor(model: Model, values: Parameters<Model['build']>[0], shop: Shop): Design {
  const found = latest.get(values);
  if (found?.model === model && found.shop === shop) return found.design;
  const design = model.build(values, toolsOf(shop));
  latest.set(values, { model, shop, design });
  return design;
}

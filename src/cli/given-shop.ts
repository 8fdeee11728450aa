import type { Design } from '../assembly/index.js';
import type { Units } from '../length/index.js';
import { loadModel, OWN_MODELS, readYaml } from '../node/index.js';
import { builtInShop, jigOfShop, readShop, type Shop, shopUnits } from '../shop/index.js';
import type { Surroundings } from './surroundings.js';

/** What is at hand: the shop, and its jig as a design. */
export interface AtHand {
  readonly shop: Shop;
  readonly jig: Design;
}

const SHOP_REMEDY = 'tenonwright shop --example prints a file to start from';

/** The model the two-rail jig of a shop file is built with. */
const JIG = 'jig';

/**
 * The shop of a run.
 *
 * @param path of the shop file, from the folder of the person; the built-in shop when undefined
 * @throws InputError when the file cannot be read or used
 */
export async function givenShop(
  path: string | undefined,
  units: Units,
  around: Surroundings,
): Promise<{ readonly shop: Shop; readonly units: Units }> {
  if (path === undefined) return { shop: builtInShop(units), units };
  const raw = await readYaml(path, around.cwd, SHOP_REMEDY);
  return { shop: readShop(raw, path, units), units: shopUnits(raw, units) };
}

/**
 * The same with the jig at hand, built by its model.
 *
 * @throws InputError when the jig's parameters cannot be used
 */
export async function atHand(path: string | undefined, units: Units, around: Surroundings): Promise<AtHand> {
  // the jig is the program's own, whatever folder the models of a run are in
  const [given, model] = await Promise.all([givenShop(path, units, around), loadModel(JIG, OWN_MODELS)]);
  return { shop: given.shop, jig: jigOfShop(given.shop, model, given.units) };
}

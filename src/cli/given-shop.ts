import type { Design } from '../assembly/index.js';
import { InputError } from '../errors.js';
import { trimmed, type Units } from '../length/index.js';
import { readParameters } from '../model/index.js';
import { builtInShop, readShop, type Shop, shopUnits } from '../shop/index.js';
import { loadModel } from './find-models.js';
import { readYaml } from './given-values.js';
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
  const { modelsFolder: _, ...here } = around;
  // the jig is the program's own, whatever folder the models of a run are in
  const [given, model] = await Promise.all([givenShop(path, units, around), loadModel(JIG, here)]);
  const { shop } = given;
  try {
    return { shop, jig: model.build(readParameters(model, jigGiven(shop), given.units)) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.code, (say) =>
      error
        .explain(say)
        .split('\n')
        .map((line) => `${shop.name}: jig: ${line}`)
        .join('\n'),
    );
  }
}

/** The jig's parameters: its router base is the router's own, unless the shop file says otherwise for the jig. */
function jigGiven({ router: { base, baseThickness }, jig }: Shop): Readonly<Record<string, unknown>> {
  const mm = (value: number) => `${trimmed(value, 6)} mm`;
  const sizes =
    base.shape === 'rectangle'
      ? { baseLength: mm(base.along), baseWidth: mm(base.across) }
      : {
          baseDiameter: mm(base.along),
          ...(base.shape === 'round' ? {} : { baseFlat: mm(base.across - base.along / 2) }),
        };
  return {
    routerBase: base.shape === 'round with one flat' ? 'round-with-flat' : base.shape,
    ...sizes,
    ...(baseThickness === undefined ? {} : { baseThickness: mm(baseThickness) }),
    ...jig,
  };
}

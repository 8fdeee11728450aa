import { dirname, join } from 'node:path';
import type { Design } from '../../assembly/index.js';
import { InputError } from '../../errors.js';
import { type Fraction, type Units, withFraction } from '../../length/index.js';
import type { Model } from '../../model/index.js';
import { loadModel, OWN_MODELS, readYaml } from '../../node/index.js';
import { builtInShop, readShop, type Shop, shopUnits, withJig, withMadeJig } from '../../shop/index.js';
import type { Surroundings } from '../around/index.js';

/** What is at hand: the shop, and its jig as a design. */
export interface AtHand {
  readonly shop: Shop;
  readonly jig: Design;
  /** What the run's model is given. */
  readonly given: Readonly<Record<string, unknown>>;
}

const SHOP_REMEDY = 'tenonwright shop --example prints a file to start from';

/**
 * A finest fraction is of no use where nothing is told in inches.
 *
 * @throws InputError `fraction-without-inches`
 */
export function requireInches(
  fraction: Fraction | undefined,
  units: Units,
  drawingUnits: Units | 'dual' = units,
): void {
  if (fraction !== undefined && units === 'mm' && drawingUnits === 'mm')
    throw new InputError(
      'fraction-without-inches',
      `--fraction is ${fraction}, and nothing is told in inches: add --units in, or leave it out`,
    );
}

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
  fraction?: Fraction,
): Promise<{ readonly shop: Shop; readonly units: Units }> {
  const raw = path === undefined ? undefined : await readYaml(path, around.cwd, SHOP_REMEDY);
  const shop = path === undefined ? builtInShop(units) : readShop(raw, path, units);
  return {
    shop: fraction ? { ...shop, fraction, units: withFraction(units, fraction) } : shop,
    units: shopUnits(raw, units),
  };
}

/**
 * The shop of a run and the jig at hand, built by its model; a shop file that names the jig that was made has that one.
 *
 * @param asked the model of the run, and what the person gave for it
 * @returns `given` with what the shop says of its jig when the run makes that jig: what the person gave goes first
 * @throws InputError when the jig's parameters cannot be used, or differ from those of the jig that was made
 */
export async function atHand(
  path: string | undefined,
  units: Units,
  around: Surroundings,
  asked: {
    readonly model: Model;
    readonly given: Readonly<Record<string, unknown>>;
    readonly fraction?: Fraction | undefined;
  },
): Promise<AtHand> {
  // the jig is the program's own, whatever folder the models of a run are in
  const [given, model] = await Promise.all([
    givenShop(path, units, around, asked.fraction),
    loadModel(JIG, OWN_MODELS),
  ]);
  const shop = await withJigMade(given.shop, given.units, model, path, around);
  return { shop, ...withJig(shop, given.units, model, asked) };
}

/** A summary is named from the folder of the shop file. */
async function withJigMade(
  shop: Shop,
  units: Units,
  model: Model,
  path: string | undefined,
  around: Surroundings,
): Promise<Shop> {
  const { made, ...jig } = shop.jig;
  if (path === undefined || made === undefined) return shop;
  const file = join(dirname(path), String(made));
  const remedy = 'name the summary.json in the folder the jig was made in';
  const summary = await readYaml(file, around.cwd, remedy);
  return withMadeJig({ ...shop, jig }, model, summary, String(made), units);
}

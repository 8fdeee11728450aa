import type { LivingDesign, LivingState } from '../files/index.js';
import { type Model, optionName, plainYaml, readParameters } from '../model/index.js';
import { pieceFrom } from '../notation/index.js';
import {
  builtInShop,
  readShop,
  type ShopField,
  shopExample,
  shopForm,
  shopUnits,
  withJig,
} from '../shop/index.js';
import type { Question, Values } from '../verdict/index.js';

/** What can be made: models in code by their names, and the designs of the page. */
export interface Stock {
  readonly models: ReadonlyMap<string, Model>;
  readonly designs: readonly LivingDesign[];
}

/** A state of the page as the program asks it. */
export interface AskedOf {
  readonly question: Question;
  readonly values: Values;
  /** camelCase names of what was given. */
  readonly given: readonly string[];
}

/**
 * Reads a state as the command line reads its words.
 *
 * @throws InputError for what cannot be used
 */
export async function askedOf(state: LivingState, stock: Stock): Promise<AskedOf> {
  const { units, given, bush } = state;
  const model = modelOf(state, stock);
  // what was mistyped is told before the shop is read
  readParameters(model, given, units);
  const jigModel = stock.models.get('jig');
  if (!jigModel) throw new Error('the page was packed without the jig');
  const raw = state.shop && (await saidOf(state.shop));
  const shop = state.shop ? readShop(raw, state.shop.name, units) : builtInShop(units);
  const { jig, given: all } = withJig(shop, shopUnits(raw, units), jigModel, { model, given });
  return {
    question: { model, shop, jig, units, ...(bush !== undefined && { bush }) },
    values: readParameters(model, all, units),
    given: Object.keys(model.parameters.shape).filter((name) => given[optionName(name)] !== undefined),
  };
}

/** The shop of a state as a form: what it says, right or wrong. */
export async function shopFormOf({ shop, units }: LivingState): Promise<readonly ShopField[]> {
  return shopForm(await saidOf(shop ?? { name: 'shop.yaml', text: shopExample(units) }), units);
}

const saidOf = ({ text, name }: NonNullable<LivingState['shop']>): Promise<unknown> =>
  plainYaml(text, name, 'tell the shop anew');

let last: { readonly told: string; readonly model: Model } | undefined;

/** A piece is read once for as long as its text stays. */
function modelOf({ design, told }: LivingState, { models, designs }: Stock): Model {
  const text = told ?? designs.find(({ name }) => name === design)?.told;
  if (!text) {
    const model = models.get(design);
    if (!model) throw new Error(`the page has no design '${design}'`);
    return model;
  }
  const key = `${text.file}\n${text.text}`;
  if (last?.told !== key) last = { told: key, model: pieceFrom(text.text, text.file) };
  return last.model;
}

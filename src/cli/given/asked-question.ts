import type { Fraction, Units } from '../../length/index.js';
import { type Model, optionName, readParameters } from '../../model/index.js';
import type { Question, Values } from '../../verdict/index.js';
import type { Call } from '../around/index.js';
import { atHand, requireInches } from './given-shop.js';
import { givenValues } from './given-values.js';

/** Options that say what a design is judged with. */
export interface AskedOptions {
  readonly from?: string | undefined;
  readonly shop?: string | undefined;
  readonly units: Units;
  readonly fraction?: Fraction | undefined;
  readonly drawingUnits?: Units | 'dual' | undefined;
  readonly bush?: number | undefined;
}

/** A design as it was asked for: what is judged, at which values. */
export interface Asked {
  readonly question: Question;
  readonly values: Values;
  /** camelCase names of the parameters the person gave. */
  readonly given: readonly string[];
}

/**
 * Reads values, shop and jig of a call.
 *
 * @throws InputError for values that cannot be used
 */
export async function askedQuestion(
  { from, shop: shopFile, units, fraction, drawingUnits, bush }: AskedOptions,
  { around, model, raw }: Pick<Call, 'around' | 'model' | 'raw'>,
): Promise<Asked> {
  requireInches(fraction, units, drawingUnits);
  const given = await givenValues(from, raw, around.cwd);
  // what was mistyped is told before a shop file is read
  readParameters(model, given, units);
  const { shop, jig, given: all } = await atHand(shopFile, units, around, { model, given, fraction });
  return {
    question: { model, shop, jig, units, ...(bush !== undefined && { bush }) },
    values: readParameters(model, all, units, shop.measures),
    given: givenNames(model, given),
  };
}

/** Parameters by their names, however they were spelled. */
const givenNames = (model: Model, given: object): readonly string[] => {
  const options = Object.keys(given).map(optionName);
  return Object.keys(model.parameters.shape).filter((name) => options.includes(optionName(name)));
};

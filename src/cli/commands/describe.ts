import * as z from 'zod';
import type { Units } from '../../length/index.js';
import type { Limits, Model } from '../../model/index.js';
import {
  describeParameters,
  limitsOf,
  optionName,
  parameterMeta,
  printValue,
  readParameters,
} from '../../model/index.js';
import { type Shop, toolsOf } from '../../shop/index.js';
import { type Command, columnsOf, DONE, table, wrap } from '../around/index.js';
import { from, givenShop, givenValues, shop, units } from '../given/index.js';

const options = { from, shop, units };

/** `tenonwright describe stool`: its parameters; with values, between what limits each size can be had beside them. */
export const describe: Command<typeof options> = {
  name: 'describe',
  summary: "list a model's parameters with defaults and ranges",
  about: 'model and parameters',
  parameters: z.object(options),
  async act({ from, shop, units }, { around, model, raw }) {
    const width = columnsOf(around);
    const rows = describeParameters(model, units);
    const given = await givenValues(from, raw, around.cwd);
    const known = Object.keys(given).length > 0 || shop !== undefined;
    const limits = known
      ? limitsBeside(model, given, units, (await givenShop(shop, units, around)).shop)
      : undefined;
    const row = (option: string) => limitWords(model, option, limits, units);
    around.out.write(`${model.title}\n${wrap(model.summary, width).join('\n')}\n\n`);
    around.out.write(
      table(
        [
          ['option', 'default', limits ? 'range with these values' : 'range', 'help'],
          ...rows.map((of) => [`--${of.option}`, of.default, row(of.option) ?? of.range, of.help]),
        ],
        width,
      ),
    );
    return DONE;
  },
};

const limitsBeside = (model: Model, given: Record<string, unknown>, units: Units, shop: Shop) =>
  limitsOf(model, readParameters(model, given, units, shop.measures), toolsOf(shop));

/** The limits of a size in the person's units; undefined where there are none beside its range. */
function limitWords(
  model: Model,
  option: string,
  limits: ReadonlyMap<string, Limits> | undefined,
  units: Units,
): string | undefined {
  const name = Object.keys(model.parameters.shape).find((one) => optionName(one) === option)!;
  const found = limits?.get(name);
  if (!found) return undefined;
  const meta = parameterMeta(name, model.parameters.shape[name]!);
  return `${printValue(meta, found.least, units)} to ${printValue(meta, found.most, units)}`;
}

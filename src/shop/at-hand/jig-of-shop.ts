import type { Design } from '../../assembly/index.js';
import { type ErrorText, InputError } from '../../errors.js';
import { trimmed, type Units } from '../../length/index.js';
import { type Model, optionName, parameterMeta, readParameters } from '../../model/index.js';
import { sheetsFor } from './sheets-for.js';
import type { Shop } from './shop.js';
import { toolsOf } from './tools-of.js';

type Given = Readonly<Record<string, unknown>>;

/**
 * The shop's two-rail jig as a design.
 *
 * @param model the jig's model
 * @param units of bare numbers among the jig's parameters in the shop file
 * @throws InputError when the jig's parameters cannot be used, each line naming the shop
 */
export function jigOfShop(shop: Shop, model: Model, units: Units): Design {
  return told(shop, () =>
    model.build(readParameters(model, asked(shop, model), units, shop.measures), toolsOf(shop)),
  );
}

/**
 * What a shop says of its jig, by the parameters of the jig's model, each with its unit, and fixings in inches for a shop in inches; all
 * else is left out. The jig is made with these when nothing else is asked for, so that it is the one the cards of every other design are for.
 *
 * @param units of bare numbers among the jig's parameters in the shop file
 * @throws InputError when they cannot be used, each line naming the shop
 */
export function jigParameters(shop: Shop, model: Model, units: Units): Given {
  return readOf(shop, model, asked(shop, model), units);
}

/** Those of the values that were given, as the model reads them, each with its unit. */
function readOf(shop: Shop, model: Model, given: Given, units: Units): Given {
  const values = told(shop, () => readParameters(model, given, units));
  const names = new Set(Object.keys(given).map(optionName));
  return withUnits(
    model,
    Object.fromEntries(Object.entries(values).filter(([name]) => names.has(optionName(name)))),
  );
}

/**
 * The shop with the jig that was made: its parameters are those it was made with.
 *
 * @param summary contents of the `summary.json` beside the jig's files, from `file`
 * @param units of bare numbers among the jig's parameters in the shop file
 * @throws InputError when it is not the summary of a jig, or the shop file says something else of the jig or its router, a line each
 */
export function withMadeJig(shop: Shop, model: Model, summary: unknown, file: string, units: Units): Shop {
  const made = parametersIn(summary);
  if (!made)
    throw new InputError(
      'jig-made-unknown',
      `${shop.name}: jig.made names ${file}, which is no summary of a jig: name the summary.json in the folder the jig was made in`,
    );
  const jig = withUnits(
    model,
    told(shop, () => readParameters(model, withUnits(model, made), 'mm')),
  );
  const same = (a: unknown, b: unknown) => String(a) === String(b);
  const differ = Object.entries(readOf(shop, model, said(shop), units)).filter(
    ([name, value]) => !same(value, jig[name]),
  );
  if (differ.length > 0) {
    const lines = differ.map(
      ([name, value]) =>
        `${optionName(name)} is ${String(value)}, but the jig in ${file} was made with ${String(jig[name])}: correct the shop file, or make the jig again`,
    );
    throw jigError(shop, 'jig-made-differs', lines.join('\n'));
  }
  return { ...shop, jig };
}

/** What the model reads back as it is, whatever the units of the run. */
function withUnits(model: Model, values: Given): Given {
  return Object.fromEntries(
    Object.entries(values).flatMap(([name, value]) => {
      const schema = model.parameters.shape[name];
      if (schema === undefined || value === undefined) return [];
      const isLength = parameterMeta(name, schema).kind === 'length' && typeof value === 'number';
      return [[name, isLength ? `${trimmed(value, 6)} mm` : value] as const];
    }),
  );
}

function parametersIn(summary: unknown): Given | undefined {
  const { design, parameters } = (summary ?? {}) as { design?: unknown; parameters?: unknown };
  if (design !== 'jig' || typeof parameters !== 'object' || parameters === null) return undefined;
  return Object.fromEntries(
    Object.entries(parameters).map(([name, told]) => [name, (told as { value?: unknown } | null)?.value]),
  );
}

/** What is wrong with the shop's jig, each line naming the shop, in the person's units. */
function jigError({ name }: Shop, code: string, text: ErrorText): InputError {
  const own = new InputError(code, text, { of: 'shop', name: 'jig' });
  const named = (line: string): string => `${name}: jig: ${line}`;
  return new InputError(code, (say) => own.explain(say).split('\n').map(named).join('\n'), [own]);
}

/** The errors of a jig's parameters. */
function told<T>(shop: Shop, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw jigError(shop, error.code, (say) => error.explain(say));
  }
}

/** What the shop says, and the plate of a sheet at hand. */
const asked = (shop: Shop, model: Model): Given => ({
  ...plateOfSheet(shop, model),
  ...said(shop),
});

/** The plate is as thick as the sheet it is cut from, where one at hand is about as thick as it usually is. */
function plateOfSheet(shop: Shop, { parameters: { shape } }: Model): Given {
  const usual = (name: string) => shape[name] && parameterMeta(name, shape[name]).default;
  const [thick, material] = [usual('plateThickness'), shop.jig.plateMaterial ?? usual('plateMaterial')];
  if (typeof thick !== 'number' || typeof material !== 'string') return {};
  const [sheet] = sheetsFor(shop.sheets, material, thick);
  return sheet ? { plateThickness: `${trimmed(sheet.thickness, 6)} mm` } : {};
}

/** The jig's parameters: its router base is the router's own, unless the shop file says otherwise for the jig. */
function said({ router: { base, baseThickness }, jig }: Shop): Given {
  const mm = (value: number) => `${trimmed(value, 6)} mm`;
  const flat = (name: string, at: number | undefined) => (at === undefined ? {} : { [name]: mm(at) });
  const sizes =
    base.shape === 'rectangle'
      ? { baseLength: mm(base.along), baseWidth: mm(base.across) }
      : {
          baseDiameter: mm(base.along),
          ...flat('baseFlat', base.flats?.near),
          ...flat('baseFlatFar', base.flats?.far),
          ...flat('baseFlatSides', base.flats?.sides),
        };
  return {
    routerBase: base.shape === 'round with flats' ? 'round-with-flats' : base.shape,
    ...sizes,
    ...(baseThickness === undefined ? {} : { baseThickness: mm(baseThickness) }),
    ...jig,
  };
}

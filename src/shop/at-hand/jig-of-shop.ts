import type { Design } from '../../assembly/index.js';
import { InputError } from '../../errors.js';
import { trimmed, type Units } from '../../length/index.js';
import { type Model, readParameters } from '../../model/index.js';
import type { Shop } from './shop.js';

/**
 * The shop's two-rail jig as a design.
 *
 * @param model the jig's model
 * @param units of bare numbers among the jig's parameters in the shop file
 * @throws InputError when the jig's parameters cannot be used, each line naming the shop
 */
export function jigOfShop(shop: Shop, model: Model, units: Units): Design {
  try {
    return model.build(readParameters(model, jigGiven(shop), units));
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

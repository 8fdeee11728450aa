import frame from '../../models/frame.js';
import jig from '../../models/jig.js';
import stool from '../../models/stool.js';
import type { Design } from '../../src/assembly/index.js';
import { type Model, readParameters } from '../../src/model/index.js';
import {
  builtInShop,
  holdingsOf,
  jigAtHand,
  type SetupCard,
  type Shop,
  setupCards,
  uncutMortises,
} from '../../src/shop/index.js';

const MODELS: Readonly<Record<string, Model>> = { stool, frame, jig } as never;

/** A design built by one of the models. */
export function made(
  model: 'stool' | 'frame' | 'jig',
  given: Readonly<Record<string, unknown>> = {},
): Design {
  const of = MODELS[model]!;
  return of.build(readParameters(of, given, 'mm'));
}

/** A design with its holdings and cards, cut with the built-in shop and the jig as it is by default, or with what is given of it. */
export function carded(
  design: Design,
  shop: Shop = builtInShop('mm'),
  jig: Readonly<Record<string, unknown>> = {},
) {
  const hand = jigAtHand(made('jig', jig));
  const { holdings, aids } = holdingsOf(design, hand, shop);
  const cards: readonly SetupCard[] = setupCards({ design, holdings, aids, jig: hand, shop });
  const uncut = uncutMortises(design, holdings);
  return { design, holdings, aids, cards, uncut, shop, jig: hand };
}

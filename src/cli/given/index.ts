export { type Asked, type AskedOptions, askedQuestion } from './asked-question.js';
export { givenShop, requireInches } from './given-shop.js';
export { givenValues } from './given-values.js';
export { bush, fraction, from, json, quiet, shop, units, writing } from './shared-options.js';

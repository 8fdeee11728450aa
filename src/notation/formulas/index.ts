export {
  type Formula,
  figureOf,
  formulaOf,
  namesOf,
  quantityOf,
  type Scope,
  sidesOf,
  type Wanted,
} from './formula.js';
export { angleOf, isPlain, lengthOf, numberOf, type Quantity, yesOf } from './quantity.js';
export { type Reckoning, reckoning } from './reckoning.js';

export {
  type Formula,
  figureOf,
  formulaOf,
  namesOf,
  quantityOf,
  type Scope,
  type Wanted,
} from './formula.js';
export * from './problem.js';
export { angleOf, lengthOf, numberOf, type Quantity, yesOf } from './quantity.js';
export * from './told.js';
export * from './tree.js';

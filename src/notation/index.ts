export { type Dimension, dimensionOf } from './dimension.js';
export {
  type Formula,
  figureOf,
  formulaOf,
  namesOf,
  quantityOf,
  type Scope,
  type Wanted,
} from './formula.js';
export { type Known, knownFrom, type WorkedOut } from './known.js';
export { holdMusts } from './musts.js';
export * from './problem.js';
export { angleOf, lengthOf, numberOf, type Quantity, yesOf } from './quantity.js';
export { readPiece } from './read-piece.js';
export * from './told.js';
export * from './tree.js';

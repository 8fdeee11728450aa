export { designOf, type PieceValues, type StoodPiece, standPiece } from './design-of.js';
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
export { HELD_KEYS } from './held.js';
export { JOINT_KEYS } from './join-options.js';
export { type Known, knownFrom, type WorkedOut } from './known.js';
export { holdMusts } from './musts.js';
export { newPiece } from './new-piece.js';
export { type Piece, pieceFrom } from './piece-from.js';
export { pieceSchemaJson, SCHEMA_KEYS } from './piece-schema.js';
export * from './problem.js';
export { angleOf, lengthOf, numberOf, type Quantity, yesOf } from './quantity.js';
export { readPiece } from './read-piece.js';
export { type Reckoning, reckoning } from './reckoning.js';
export type { BoardSaidBack, PieceSaidBack, SaidBack } from './said-back.js';
export { BOARD_KEYS } from './stand-board.js';
export type { Stood } from './stood.js';
export * from './told.js';
export * from './tree.js';
export { USER_KEYS } from './use.js';

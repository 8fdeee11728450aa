export { BOARD_KEYS } from './boards/index.js';
export { dimensionOf, holdMusts, knownFrom } from './dimensions/index.js';
export {
  angleOf,
  figureOf,
  formulaOf,
  lengthOf,
  namesOf,
  numberOf,
  type Quantity,
  quantityOf,
  type Scope,
  type Wanted,
  yesOf,
} from './formulas/index.js';
export { HELD_KEYS, JOINT_KEYS } from './joints/index.js';
export {
  type BoardSaidBack,
  newPiece,
  type Piece,
  pieceFrom,
  pieceSchemaJson,
  type SaidBack,
  SCHEMA_KEYS,
} from './piece/index.js';
export { USER_KEYS } from './places/index.js';
export { didYouMeanWord, Problem, Problems, partOf, problemWith, readPiece } from './text/index.js';

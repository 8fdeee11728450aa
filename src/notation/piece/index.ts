export { newPiece } from './new-piece.js';
export { type Piece, pieceFrom } from './piece-from.js';
export { pieceSchemaJson, SCHEMA_KEYS } from './piece-schema.js';
export type { BoardSaidBack, PieceSaidBack, SaidBack } from './said-back.js';

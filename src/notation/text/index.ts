export { atLine, didYouMeanWord, FollowsOn, Problem, Problems, problemWith } from './problem.js';
export { readPiece } from './read-piece.js';
export { keysOf, needed, oneOf, onlyKeys, partsOf, phraseOf, phrasesOf } from './said.js';
export { type Place, partOf, type Told } from './told.js';
export type {
  BoardEntry,
  DimensionLine,
  Entry,
  Keys,
  MustLine,
  PairEntry,
  Phrase,
  PieceTree,
  Said,
  WorkedOutLine,
} from './tree.js';

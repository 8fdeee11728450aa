export { alikeRows } from './alike-rows.js';
export {
  type BarRow,
  type Block,
  type BlockTable,
  cautions,
  type FigureKey,
  type FigureSlot,
  figure,
  heading,
  list,
  NEW_PAGE,
  paragraph,
  shareWords,
  strong,
  table,
  type Words,
  wordsOf,
} from './block.js';
export { faceWords } from './face-words.js';
export { inARow } from './in-a-row.js';
export { inBoth } from './in-both.js';
export { MARK_LETTERS, type MarkedKind, markOf } from './mark-letters.js';
export { markedSides } from './piece-sides.js';

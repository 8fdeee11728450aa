export {
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
  strong,
  table,
  type Words,
  wordsOf,
} from './block.js';
export { faceWords } from './face-words.js';
export { inBoth, inBothApart } from './in-both.js';

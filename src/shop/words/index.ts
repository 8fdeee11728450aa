export { faceWords } from './face-words.js';
export { inBoth } from './in-both.js';

export { FILE_KINDS } from './file-kinds.js';
export { checkDesign, makeDesign } from './make-design.js';

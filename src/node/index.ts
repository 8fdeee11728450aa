// What touches the disk, the process and the loading of code: everything before this folder also runs in a page.

export { loadModel, modelNames, OWN_MODELS } from './find-models.js';
export { isPiecePath, loadPiece, looksLikePiece, OWN_PIECES, pieceFiles, pieceNames } from './find-pieces.js';
export { type Ask, type Judges, type Said, startJudges } from './judges.js';
export { keepLines, keptLines } from './kept-lines.js';
export { checkDesign, makeDesign, requireOutFolder, writeFolder } from './late.js';
export type { MakeRequest } from './make-design.js';
export { newPieceFile } from './new-piece-file.js';
export { packageFolder } from './package-folder.js';
export { readYaml } from './read-yaml.js';
export { shippedRangesText } from './shipped-ranges.js';
export { showInBrowser } from './show-in-browser.js';
export { SUPPLIES } from './supplies.js';
export { version } from './version.js';
export { writePicture } from './write-picture.js';

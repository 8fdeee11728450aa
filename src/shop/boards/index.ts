export { type BoardEnds, boardEnds, type EndsWord } from './board-ends.js';
export { boardFeet, type WoodVolume, woodVolume } from './board-feet.js';
export { boardMarks, markWords } from './board-marks.js';
export { boardsToFit } from './boards-to-fit.js';
export { type Hand, handsOf } from './handed.js';
export { type OutlineTemplate, outlineTemplates } from './outline-templates.js';
export { type BoardKind, boardKinds } from './same-boards.js';

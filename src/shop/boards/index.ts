export { type BoardEnds, boardEnds, type EndsWord } from './board-ends.js';
export { boardFeet, type WoodVolume, woodVolume } from './board-feet.js';
export { boardMarks, markWords } from './board-marks.js';
export { boardsToFit } from './boards-to-fit.js';
export { type Hand, handsOf } from './handed.js';
export { longSides, sawnWords } from './long-sides.js';
export {
  type OutlineTemplate,
  outlineTemplates,
  type PrintedTemplate,
  printedTemplates,
} from './outline-templates.js';
export { type BoardKind, boardKinds } from './same-boards.js';
export { sideOfBlank } from './side-of-blank.js';

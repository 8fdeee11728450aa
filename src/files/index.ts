// The writers of DXF (mesh-dxf, template-dxf) load its library: import them when they are needed.

export { LIST, type OutputFile, requireDistinct, requireSafePath, sha256 } from './folder/index.js';
export {
  designFiles,
  FILE_KINDS,
  type FileKind,
  fileKinds,
  onePlan,
  requirePlanOptions,
  summaryText,
} from './jobs/index.js';
export {
  type DesignRequest,
  type DesignResult,
  type LivingScripts,
  type Made,
  type PlanFonts,
  STEPS,
  type Started,
  type Supplies,
  startDesign,
  withMade,
} from './made/index.js';
export {
  type LivingData,
  type LivingDesign,
  type LivingState,
  livingPage,
  panelHtml,
  type SizeRow,
  shownAtOnce,
  sizeForm,
  stillOf,
  type ToldPiece,
  toldOnPage,
} from './page/index.js';
export { type MarksPaper, markdown, marksSvg, rangeFiles } from './papers/index.js';
export { numberedPicture } from './pictures/numbered-picture.js';
export {
  type BoardSummary,
  type Change,
  changeLines,
  changesSince,
  type JointSummary,
  json,
  type MortiseSummary,
  type Summary,
  type SummaryParts,
  summaryOf,
  type WrittenFile,
} from './summary/index.js';
export { viewSvg } from './svg/index.js';

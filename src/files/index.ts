// The writers of solids and templates (stl, mesh-dxf, template-dxf) load the modelling and DXF libraries: import them when
// they are needed.

export { LIST, type OutputFile, sha256, writeFolder } from './folder/index.js';
export { checkDesign, FILE_KINDS, makeDesign } from './jobs/index.js';
export type { DesignRequest, DesignResult } from './made/index.js';
export {
  type MarksPaper,
  marksSvg,
  type OrderPaper,
  orderMd,
  type SetupPaper,
  setupMd,
} from './papers/index.js';
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

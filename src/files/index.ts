// The writers of solids and templates (stl, mesh-dxf, template-dxf) load the modelling and DXF libraries: import them when
// they are needed.

export { type Change, changeLines, changesSince } from './changes.js';
export { FILE_KINDS } from './file-kinds.js';
export { json } from './json.js';
export { checkDesign, makeDesign } from './make-design.js';
export { type MarksPaper, marksSvg } from './marks-svg.js';
export { type OrderPaper, orderMd } from './order-md.js';
export { writeFolder } from './output-folder.js';
export { LIST, type OutputFile, sha256 } from './owned-files.js';
export type { DesignRequest, DesignResult } from './request.js';
export { type SetupPaper, setupMd } from './setup-md.js';
export {
  type BoardSummary,
  type JointSummary,
  type MortiseSummary,
  type Summary,
  type SummaryParts,
  summaryOf,
  type WrittenFile,
} from './summary.js';

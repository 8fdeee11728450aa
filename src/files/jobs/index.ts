export { designFiles, onePlan, requirePlanOptions } from './design-files.js';
export { FILE_KINDS, type FileKind, fileKinds, USUAL_KINDS } from './file-kinds.js';
export { summaryText } from './summary-text.js';

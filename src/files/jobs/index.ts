export { designFiles, requirePlanOptions } from './design-files.js';
export { FILE_KINDS, fileKinds } from './file-kinds.js';
export { summaryText } from './summary-text.js';

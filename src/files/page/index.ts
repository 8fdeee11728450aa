export type { LivingData, LivingDesign, LivingState, ToldPiece } from './living-data.js';
export { livingPage } from './living-file.js';
export { shownAtOnce, stillOf, toldOnPage } from './page-file.js';
export { panelHtml } from './preview-page.js';
export { type SizeRow, sizeForm } from './size-form.js';

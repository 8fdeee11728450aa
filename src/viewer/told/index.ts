export type * from './preview-data.js';
export { isFlat, VIEWS, type ViewName } from './views.js';

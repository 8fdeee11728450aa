// What the writer of the page needs to know of its script; the script itself is packed by the build.
export { KEYS } from './keys.js';
export type { Looker } from './looker.js';
export { onPage } from './on-page.js';
export type * from './preview-data.js';
export { VIEWS, type ViewName } from './views.js';

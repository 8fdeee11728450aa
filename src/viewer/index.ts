// What the writer of the page needs to know of its script; the script itself is packed by the build. By file, not by room: a
// room's index brings what draws along.
export { KEYS } from './controls/keys.js';
export type { Looker } from './controls/looker.js';
export { onPage } from './controls/on-page.js';
export type * from './told/preview-data.js';
export { VIEWS, type ViewName } from './told/views.js';

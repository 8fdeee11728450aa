export { html } from './html.js';
export { cutLine } from './layout-words.js';
export { markdown } from './markdown.js';
export { type MarksPaper, marksSvg } from './marks-svg.js';
export { rangeFiles } from './range-files.js';

export { KEYS } from './keys.js';
export { type Looker, lookerOf } from './looker.js';
export { onPage, readData, say } from './on-page.js';
export { followLink, wireLink } from './wire-link.js';
export { wireMeasure } from './wire-measure.js';
export { wirePanel } from './wire-panel.js';
export { wireKeys, wirePointer } from './wire-picture.js';
export { wirePicture } from './wire-saving.js';

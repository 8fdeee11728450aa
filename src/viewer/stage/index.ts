export type { Seen } from './eye.js';
export { pictureName, pictureOf } from './save-picture.js';
export { openStage, type Stage } from './stage.js';

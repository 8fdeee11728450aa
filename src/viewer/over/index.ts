export { boxesTold } from './boxes-told.js';
export { AT_FIRST, type Choices, litOf, offsetOf, opacityOf, sectionOf, stepsOf } from './choices.js';
export { distance, measuredWords, nameOfSpot } from './measured.js';
export type { Pixel } from './over-sheet.js';
export { type Written, writeOver } from './write-over.js';

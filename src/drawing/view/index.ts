export { longGrain } from './grain-marks.js';
export { onSheet, type ViewPlace, viewBox, viewLines, viewPoint } from './placed-view.js';
export { type Scene, sceneOf } from './scene.js';
export { type Section, sectionEntities, sectionOf } from './section-view.js';
export type { Look, SeenPart, Wire } from './seen-part.js';
export { type View, type ViewLine, viewIn, viewOf } from './view.js';
export { lookingFrom, VIEW_FRAMES, type ViewName } from './view-frames.js';
export { seenAtAll, visibleSpots } from './visible-spots.js';

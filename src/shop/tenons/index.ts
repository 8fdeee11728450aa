export { type SlotGrain, type SlotWidth, slotWidthOf } from './slot-width.js';
export { type EdgeStyle, type TenonEdge, tenonEdges } from './tenon-edges.js';
export { mitreWords, type TenonMitre, tenonMitres } from './tenon-mitres.js';
export { type Grooves, groovesOf, type Relief, reliefOf } from './tenon-relief.js';
export { type AlignmentSlack, type TenonKind, tenonSchedule } from './tenon-schedule.js';
export { type Strip, type StripPlan, tenonStrips } from './tenon-strips.js';

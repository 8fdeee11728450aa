export { captives } from './captives.js';
export { fastenings } from './fastenings.js';
export { grooves } from './grooves.js';
export { inLine } from './in-line.js';
export { layoutNotes } from './layout-notes.js';
export { mitredEnds } from './mitred-ends.js';
export { shoulders } from './shoulders.js';
export { tenonFit } from './tenon-fit.js';

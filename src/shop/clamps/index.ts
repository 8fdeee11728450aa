export type { Clamp, ClampEnd } from './clamp.js';
export type { ClampBearing } from './clamp-bearing.js';
export { type PadUse, padBoard, padUse } from './clamp-pad.js';
export type { ClampPad } from './clamp-pads.js';
export {
  type ClampOffset,
  type ClampPlan,
  clampPlan,
  jawsOutOfParallel,
  stagedByClamps,
} from './clamps.js';
export { type ClampChoice, type ClampNeed, clampsChosen } from './clamps-chosen.js';
export { type OffcutWedge, offcutWedges } from './offcut-wedges.js';

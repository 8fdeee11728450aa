export type { ThickEnd } from './bearing.js';
export { type BoardState, boardStates, facesIn } from './board-states.js';
export { type Hold, holdOver } from './hold.js';
export type {
  Aid,
  BrokenLimit,
  FromFace,
  Holding,
  LimitCode,
  RailBearing,
  Refusal,
  SupportUse,
  WedgeUse,
} from './holding.js';
export { type Holdings, holdingsOf } from './holdings-of.js';
export type { Horn } from './horn.js';
export { hornsOf } from './horns.js';
export { type LaidIn, laidIn, sameSetting } from './laid-in.js';
export { hornedMouth, type LineMark, type LineMarks } from './line-marks.js';
export { type MarkedLines, markedOut } from './measured.js';
export { withHorn } from './resting.js';
export type { Stage, StageName } from './stage.js';
export { stagesOf } from './stages.js';
export { toolLimits } from './tool-limits.js';
export { type Uncut, uncutMortises, unheld } from './uncut.js';
export { THICK_END } from './wedge.js';
export { type SeenFace, type SeenStage, seenStage, type Work } from './work-at-stage.js';

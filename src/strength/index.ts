export type { Asked, Told } from './asked.js';
export { STRENGTH_BASES, type StrengthCode } from './codes.js';
export { footLines } from './foot-line.js';
export { GLUES, type GlueTold } from './glue.js';
export { type Load, loadsOf } from './load.js';
export {
  type Margin,
  type MarginUnit,
  type NotComputed,
  nearestLimit,
  passed,
  type Worked,
} from './margin.js';
export { moving } from './moving.js';
export { quickResting } from './quick-resting.js';
export { type Resting, restingOf } from './resting.js';
export { sayFigure } from './say-figure.js';
export { STRAIGHT_GRAIN, type StockState, type StockTold, stockIn } from './stock-state.js';
export { type Strength, strengthOf, strengthOn } from './strength.js';
export { type TipsFirst, tipsFirst } from './tips-first.js';
export { type UsedSurface, usedSurfaces } from './used-surface.js';
export { type Borne, type WoodStrength, woodStrength } from './wood-strength.js';

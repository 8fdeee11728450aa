export { bevelAngle } from './bevel-angle.js';
export { linesAt } from './bevel-lines.js';
export { type Downhill, downhillOf } from './downhill.js';
export { size, toolSize } from './feature.js';
export { lineInside } from './line-inside.js';
export { scaledEntities } from './scaled-entities.js';
export {
  type CircleEntity,
  type Dashing,
  type Entity,
  LAYERS,
  type Layer,
  type LineEntity,
  loopOf,
  type ProfileEntity,
  type Template,
  type TextEntity,
} from './template.js';
export { partLines } from './template-line.js';
export { type TemplateOptions, templateFeatures, templateOf } from './template-of.js';

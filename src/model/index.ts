export { canBeBuilt } from './can-be-built.js';
export {
  derivedText,
  describeParameters,
  labelOf,
  type ParameterRow,
  type ParameterValue,
  parameterValues,
} from './describe-parameters.js';
export { type Limits, limitsOf } from './limits.js';
export { defineModel, type Model, type ModelText, type Tools } from './model.js';
export { didYouMean, nearest } from './nearest.js';
export { angle, count, length, mass } from './number-kinds.js';
export { optionName } from './option-name.js';
export { type Kind, type ParameterMeta, parameterMeta } from './parameter.js';
export { plainYaml } from './plain-yaml.js';
export { readParameters } from './read-parameters.js';
export { printValue } from './read-value.js';
export { choice, flag, lengthList, text } from './word-kinds.js';

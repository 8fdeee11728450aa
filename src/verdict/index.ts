export { cureKey, worthCuring } from './cure-key.js';
export { type Cure, cureOfRefusal, curesOf } from './cures.js';
export { asTyped, type Knob, knobs } from './knobs.js';
export { quickVerdictOf } from './quick-verdict.js';
export { latestVerdict, type Question, type Values, type Verdict, verdictOf } from './verdict.js';

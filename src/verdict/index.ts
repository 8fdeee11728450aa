export { type Cure, cureKey, cureOfRefusal, curesOf, worthCuring } from './cures.js';
export { asTyped, type Knob, knobs } from './knobs.js';
export { latestVerdict, type Question, type Values, type Verdict, verdictOf } from './verdict.js';

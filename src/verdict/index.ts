export { type Cure, cureOfRefusal, curesOf } from './cures.js';
export { latestVerdict, type Question, type Values, type Verdict, verdictOf } from './verdict.js';

export { COMMON_PRACTICE, MEASURED } from './basis.js';
export { type Finding, remedyWords } from './finding.js';
export { FINDING_KINDS, type FindingCode, type FindingKind, type Level } from './finding-kinds.js';
export { findingsMd } from './findings-md.js';
export { findingsOf } from './margin-findings.js';

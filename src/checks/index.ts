export { COMMON_PRACTICE, MEASURED } from './basis.js';
export type { Bench, Check } from './bench.js';
export { dryRun } from './dry-run.js';
export { type Finding, remedyWords } from './finding.js';
export { FINDING_KINDS, type FindingCode, type FindingKind, type Level } from './finding-kinds.js';
export { findingsMd } from './findings-md.js';
export { heldMortises } from './holding.js';
export { located } from './located.js';
export { findingsOf } from './margin-findings.js';
export { type QuickVerdict, quickVerdict } from './quick-verdict.js';
export {
  type BenchInShop,
  benchInShop,
  benchOf,
  CHECKS,
  failed,
  runChecks,
  worstFirst,
} from './run-checks.js';
export type { Held } from './set-up-on-solids.js';
export { type Sweep, sweptBound } from './swept-bound.js';

export { type Bench, type Check, COMMON_PRACTICE, MEASURED } from './bench.js';
export { dryRun } from './dry-run.js';
export type { Finding, Level } from './finding.js';
export { heldMortises } from './holding.js';
export { located } from './located.js';
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

export { type Bench, type Check, type Held, located, type Sweep, sweptBound } from './bench/index.js';
export {
  COMMON_PRACTICE,
  FINDING_KINDS,
  type Finding,
  type FindingCode,
  type FindingKind,
  findingsMd,
  findingsOf,
  type Level,
  MEASURED,
  remedyWords,
} from './finding/index.js';
export { dryRun, heldMortises } from './shop/index.js';
export {
  type BenchInShop,
  benchInShop,
  benchOf,
  CHECKS,
  failed,
  type QuickVerdict,
  quickVerdict,
  runChecks,
  worstFirst,
} from './verdict/index.js';

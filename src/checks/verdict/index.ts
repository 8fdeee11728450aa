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

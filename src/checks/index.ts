export { type Bench, type Check, COMMON_PRACTICE, MEASURED } from './bench.js';
export type { Finding, Level } from './finding.js';
export { benchOf, CHECKS, failed, runChecks } from './run-checks.js';

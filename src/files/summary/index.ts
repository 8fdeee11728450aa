export { type Change, changeLines, changesSince } from './changes.js';
export { json } from './json.js';
export {
  type BoardSummary,
  type JointSummary,
  type MortiseSummary,
  type Summary,
  type SummaryParts,
  summaryOf,
  type WrittenFile,
} from './summary.js';

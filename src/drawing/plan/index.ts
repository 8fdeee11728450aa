export {
  appendixName,
  type PlanEntry,
  type PlanPart,
  type PlanSet,
  planSheets,
  planTemplates,
} from './plan.js';
export { numberedDrafts, type PlanContent, planContent } from './plan-content.js';
export type { PlanParts } from './plan-parts.js';
export { templatesOf } from './plan-templates.js';

export { type OrderOfWork, orderOfWork } from './order-of-work.js';
export type { WorkKind, WorkStep } from './work-step.js';

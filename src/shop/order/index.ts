export { type NotOrdered, type OrderOfWork, orderOfWork } from './order-of-work.js';
export type { WholeJob } from './whole-job.js';
export type { WorkKind, WorkStep } from './work-step.js';

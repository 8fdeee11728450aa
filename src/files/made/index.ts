export { type Made, STEPS, withMade } from './made.js';
export type { DesignRequest, DesignResult } from './request.js';

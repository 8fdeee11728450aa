export { type Made, STEPS, type Started, startDesign, withMade } from './made.js';
export type { DesignRequest, DesignResult } from './request.js';
export type { LivingScripts, PlanFonts, Supplies } from './supplies.js';

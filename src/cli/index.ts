export type { MadeFile, MakeRequest, MakeResult, Pipeline } from './pipeline.js';
export { run } from './run.js';
export type { Sink, Surroundings } from './surroundings.js';

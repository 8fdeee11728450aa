export type { MadeFile, MakeRequest, MakeResult, Pipeline, Sink, Surroundings } from './around/index.js';
export { run } from './run.js';

export { runPipeline } from './run-pipeline.js';
export { showResult } from './show-result.js';

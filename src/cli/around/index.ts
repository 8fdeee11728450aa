export { BAD_INPUT, type Call, type Command, DONE, FAILED_CHECKS, FAULT } from './command.js';
export type { MadeFile, MakeRequest, MakeResult, Pipeline } from './pipeline.js';
export { NO_PROGRESS, progressLine } from './progress-line.js';
export { columnsOf, modelsOf, piecesOf, type Sink, type Surroundings } from './surroundings.js';
export { table, wrap } from './table.js';

export { chainRow } from './chain-row.js';
export { type RowPlace, rowBeside, type Side } from './row-side.js';
export { type DimensionRow, runningRow } from './running-row.js';

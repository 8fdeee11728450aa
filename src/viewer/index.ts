export type * from './preview-data.js';

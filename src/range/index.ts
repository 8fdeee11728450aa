export type { Border, Cell, MapOf, MapSize } from './across.js';
export type { Alone, Beyond, Span } from './alone.js';
export type { Answer, At, Glance, Judge, Unsound } from './answer.js';
export { type Dimension, dimensionOf } from './dimension.js';
export { aboutOf, glanceOf, isUsed, judgeOf } from './full-answer.js';
export { KeptAnswers } from './kept-answers.js';
export { dimensionWords, type RangePaper, rangePaper, valueWords } from './range-paper.js';
export { type Progress, type Ranges, rangesOf, type Share, type Wanted, workShare } from './ranges.js';
export type { Box, BoxLimits } from './together.js';

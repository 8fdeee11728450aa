import { USUAL_SEASON } from '../../movement/index.js';
import { moving } from '../../strength/index.js';
import type { Bench } from '../bench/index.js';
import { type Finding, findingsOf } from '../finding/index.js';

/** What the seasons of the piece's place do to its boards, tenons, buttons and panels. */
export const movement = ({ solids, say, told }: Bench): readonly Finding[] =>
  findingsOf(moving(solids.design, told?.season ?? USUAL_SEASON).margins, say);

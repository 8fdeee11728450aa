import { strengthOn } from '../../strength/index.js';
import type { Bench } from '../bench/index.js';
import { type Finding, findingsOf } from '../finding/index.js';

/** How the piece stands and what it bears. */
export const strength = ({ solids, say, told }: Bench): readonly Finding[] =>
  findingsOf(strengthOn(solids, told)?.margins ?? [], say);

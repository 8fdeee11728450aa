import { strengthOn } from '../strength/index.js';
import type { Bench } from './bench.js';
import type { Finding } from './finding.js';
import { findingsOf } from './margin-findings.js';

/** How the piece stands and what it bears. */
export const strength = ({ solids, say, told }: Bench): readonly Finding[] =>
  findingsOf(strengthOn(solids, told)?.margins ?? [], say);

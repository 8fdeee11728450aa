import { type Margin, passed, STRENGTH_BASES, sayFigure, strengthOn } from '../strength/index.js';
import type { Bench } from './bench.js';
import type { Finding } from './finding.js';

/** How the piece stands and what it bears: each margin that is not kept. */
export const strength = ({ solids, say }: Bench): readonly Finding[] =>
  (strengthOn(solids)?.margins ?? []).flatMap((margin): Finding[] => {
    const over = passed(margin);
    if (!over) return [];
    const { code, subjects, figure, unit, what, governs, remedy, warning } = margin;
    const { level, limit } = over;
    return [
      {
        code,
        level,
        subjects,
        measured: figure,
        limit,
        ...(level === 'error' && warning !== undefined && { wanted: warning }),
        unit,
        message: `${what} is ${sayFigure(say, figure, unit)}; ${bound(margin, level)} ${sayFigure(say, limit, unit)}${governs ? ` (${governs} governs)` : ''}`,
        remedy,
        basis: STRENGTH_BASES[code],
      },
    ];
  });

const bound = ({ better }: Margin, level: Finding['level']): string => {
  const most = better === 'more' ? 'at least' : 'at most';
  return level === 'error' ? `it must be ${most}` : `wanted is ${most}`;
};

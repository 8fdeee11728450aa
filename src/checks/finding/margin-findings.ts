import type { Say } from '../../length/index.js';
import { type Margin, type MarginUnit, passed, STRENGTH_BASES, sayFigure } from '../../strength/index.js';
import type { Finding } from './finding.js';

/** Each margin that is not kept, as a finding. */
export const findingsOf = (margins: readonly Margin[], say: Say): readonly Finding[] =>
  margins.flatMap((margin): Finding[] => {
    const over = passed(margin);
    if (!over) return [];
    const { code, subjects, figure, unit, what, governs, remedy, warning, at } = margin;
    const { level, limit } = over;
    const [has, bounded] = told(say, unit, figure, limit);
    return [
      {
        code,
        level,
        subjects,
        of: what,
        measured: figure,
        limit,
        ...(level === 'error' && warning !== undefined && { wanted: warning }),
        unit,
        ...(at && { at }),
        message: `${what} is ${has}; ${bound(margin, level)} ${bounded}${governs ? ` (${governs} governs)` : ''}`,
        remedy,
        basis: STRENGTH_BASES[code],
      },
    ];
  });

/** A figure and its limit, so that they read apart; a small length in hundredths. */
const told = (say: Say, unit: MarginUnit, figure: number, limit: number): readonly [string, string] =>
  unit === 'mm'
    ? (figure < FINE ? say.fines : say.lengths)(figure, limit)
    : [sayFigure(say, figure, unit), sayFigure(say, limit, unit)];

/** Lengths below this are told in hundredths, mm. */
const FINE = 10;

const bound = ({ better }: Margin, level: Finding['level']): string => {
  const most = better === 'more' ? 'at least' : 'at most';
  return level === 'error' ? `it must be ${most}` : `wanted is ${most}`;
};

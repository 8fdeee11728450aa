import type { Finding } from '../../checks/index.js';
import {
  type Block,
  heading,
  paragraph,
  type ShopPapers,
  shareWords,
  strong,
  table,
} from '../../shop/index.js';

/** What the checks found: what did not pass in full, the rest in a line. */
export function resultBlocks(findings: readonly Finding[], checks: readonly string[]): readonly Block[] {
  const count = (level: Finding['level']) => findings.filter((one) => one.level === level).length;
  return [
    ...(findings.length > 0 ? [heading('Results of the checks')] : []),
    paragraph(
      `Checks: ${count('error')} errors, ${count('warning')} warnings, ${count('note')} notes. Whatever is not listed passed: ${checks.length} checks on the solids, named in the appendix.`,
    ),
    ...(findings.length > 0
      ? [
          table(
            ['level', 'what was found', 'what to do', 'basis'],
            findings.map(({ level, message, remedy, basis }) => [
              level === 'error' ? strong(level) : level,
              message,
              remedy,
              basis,
            ]),
          ),
        ]
      : []),
  ];
}

/** The loads and limits that come nearest to each other; all of them stand in the appendix. */
export function bearingBlocks(
  { strength }: Pick<ShopPapers, 'strength'>,
  bars: readonly Block[],
): readonly Block[] {
  const rows = bars.flatMap((block) => (block.kind === 'bars' ? block.rows : []));
  const nearest = rows.toSorted((a, b) => b.share - a.share).slice(0, NEAREST);
  if (nearest.length === 0) return [];
  return [
    heading('What it bears'),
    paragraph(
      `Estimates from published averages of clear wood and from statics, no test and no approval; try it with sand bags before anyone uses it.${strength ? ` Nearest to their limits, of ${rows.length}; the others, the loads, what was not worked out and the trial are in the appendix:` : ''}`,
    ),
    table(
      ['what', 'figure', 'limit', 'taken'],
      nearest.map((row) => [row.label, row.figure, row.limit, shareWords(row)]),
    ),
  ];
}

const NEAREST = 3;

import type { Finding } from '../../checks/index.js';
import { type Block, heading, paragraph, type ShopPapers, strong, table } from '../../shop/index.js';

/** What the checks found, with the basis of each. */
export function checkBlocks(
  findings: readonly Finding[],
  checks: readonly string[],
  papers: ShopPapers,
): readonly Block[] {
  const doubtful = papers.cards.flatMap((card) =>
    card.figures
      .filter(({ verdict }) => verdict !== 'passed')
      .map((figure) => [card.id, figure.name, figure.verdict, figure.text]),
  );
  const count = (level: Finding['level']) => findings.filter((one) => one.level === level).length;
  return [
    heading('Results of the checks', 1),
    paragraph(`Checked on the solids: ${checks.join(', ')}.`),
    paragraph(
      `${count('error')} errors, ${count('warning')} warnings, ${count('note')} notes. Whatever is not listed passed its check.`,
    ),
    ...(findings.length > 0
      ? [
          table(
            ['level', 'what was found', 'what to do', 'basis'],
            [
              ...findings.map(({ level, message, remedy, basis }) => [
                level === 'error' ? strong(level) : level,
                message,
                remedy,
                basis,
              ]),
            ],
          ),
        ]
      : []),
    ...(doubtful.length > 0
      ? [heading('Not verified for this shop'), table(['card', 'figure', 'verdict', 'why'], [...doubtful])]
      : []),
  ];
}

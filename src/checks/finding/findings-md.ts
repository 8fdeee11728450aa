import { FINDING_KINDS, type FindingKind } from './finding-kinds.js';

const LEVELS = { error: 'Errors', warning: 'Warnings', note: 'Notes' } as const;

/** The catalogue of everything a check can find, as Markdown: `docs/findings.md`. */
export function findingsMd(): string {
  const kinds = Object.entries(FINDING_KINDS).toSorted(([a], [b]) => (a < b ? -1 : 1));
  const sections = (['error', 'warning', 'note'] as const).flatMap((level) => [
    `## ${LEVELS[level]}`,
    ...kinds.filter(([, kind]) => kind.level === level).map(([code, kind]) => entry(code, kind)),
  ]);
  return `${[HEAD, ...sections].join('\n\n')}\n`;
}

const HEAD = `# Findings

Everything a check can find, by the worst it can be. An error holds cutting files back; a warning wants a look; a note says what was
done. Each finding names the pieces, the figure found and the figure allowed; \`summary.json\` carries its code.

Written by \`node scripts/findings.mjs\` from the lists in \`src/checks/finding\`.`;

const entry = (code: string, { meaning, limit, basis, cure }: FindingKind): string =>
  [`### ${code}`, '', meaning, '', `- Limit: ${limit}.`, `- Basis: ${basis}.`, `- Cure: ${cure}`].join('\n');

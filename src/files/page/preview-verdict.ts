import type { PreviewFinding } from '../../viewer/index.js';

/** What the badge beside the title says. */
export interface PreviewVerdict {
  readonly level: 'error' | 'warning' | 'sound';
  readonly text: string;
}

/** The verdict in as few words as there can be: notes change nothing about it. */
export function previewVerdict(findings: readonly Pick<PreviewFinding, 'level'>[]): PreviewVerdict {
  const count = (level: PreviewFinding['level']): number =>
    findings.filter((finding) => finding.level === level).length;
  const said = (['error', 'warning'] as const)
    .map((level) => [level, count(level)] as const)
    .filter(([, many]) => many > 0);
  const [worst] = said;
  return worst
    ? {
        level: worst[0],
        text: said.map(([level, many]) => `${many} ${level}${many > 1 ? 's' : ''}`).join(', '),
      }
    : { level: 'sound', text: 'checks passed' };
}

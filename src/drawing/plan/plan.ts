import { plotterSheet, type TiledTemplate, tileSheets } from '../printed-template/index.js';
import { finishSheets, type Paper, type Sheet, type SheetSet } from '../sheet/index.js';
import { coverPage } from './cover-page.js';
import type { PlanContent } from './plan-content.js';
import type { PlanParts } from './plan-parts.js';

/** A place in a plan: its sheet, counted from 0, and the places below it. */
export interface PlanEntry {
  readonly title: string;
  readonly sheet: number;
  readonly parts?: readonly PlanEntry[];
}

/** A plan for one paper. */
export interface PlanSet {
  readonly paper: Paper;
  readonly title: string;
  readonly sheets: readonly Sheet[];
  /** Its outline: sections, and what is in them. */
  readonly entries: readonly PlanEntry[];
}

/** Which pages a file holds: a plan with its appendix at the end, a plan whose appendix is elsewhere or left out, or that appendix. */
export type PlanPart = 'whole' | 'appendix apart' | 'appendix left out' | 'appendix';

/** The plan on a paper: the cover first, then every section in the order of the work, the appendix last; numbered, with its outline. */
export function planSheets(content: PlanContent, paper: Paper, part: PlanPart = 'whole'): PlanSet {
  const { parts } = content;
  const isAppendix = part === 'appendix';
  const sections = [
    ...(isAppendix ? [] : content.sections),
    ...(part === 'whole' || isAppendix ? content.appendix : []),
  ];
  const front = isAppendix ? 0 : 1;
  const counts = sections.map(({ drafts, template }) => drafts.length + printed(template));
  const starts = counts.map((_, i) => front + counts.slice(0, i).reduce((sum, one) => sum + one, 0));
  const total = front + counts.reduce((sum, one) => sum + one, 0);
  const set: SheetSet = { ...commonTo(parts), total };
  const cover = () =>
    coverPage(
      {
        solids: parts.solids,
        papers: parts.papers,
        picture: content.picture,
        size: content.size,
        summary: parts.summary,
        units: parts.units,
        contents: [
          ...sections.map(({ title, place }, i) => {
            const [first, last] = [starts[i]! + 1, starts[i]! + counts[i]!];
            return { title, place, pages: first === last ? String(first) : `${first} to ${last}` };
          }),
          ...elsewhere(part, paper),
        ],
      },
      paper,
    );
  const sheets = [
    ...(isAppendix ? [] : finishSheets([cover()], set)),
    ...sections.flatMap((section, i) => {
      const before = starts[i]!;
      const { drafts } = section;
      return [
        ...finishSheets(drafts, { ...set, before }, paper),
        ...(section.template
          ? tileSheets(section.template, {
              paper,
              set,
              before: before + drafts.length,
              total,
              ...(parts.printScale === undefined ? {} : { printScale: parts.printScale }),
            })
          : []),
      ];
    }),
  ];
  return {
    paper,
    title: `${parts.solids.design.title}, ${isAppendix ? 'appendix of the plan' : 'plan'} for ${paper}`,
    sheets,
    entries: [
      ...(isAppendix ? [] : [{ title: 'Cover', sheet: 0 }]),
      ...sections.map(({ title, parts: inside, template, drafts }, i): PlanEntry => {
        const start = starts[i]!;
        const sheetEntries = Array.from({ length: printed(template) }, (_, k) => ({
          title: `sheet ${k + 1}`,
          sheet: start + drafts.length + k,
        }));
        return {
          title,
          sheet: start,
          parts: [...inside.map((one) => ({ title: one.title, sheet: start + one.at })), ...sheetEntries],
        };
      }),
    ],
  };
}

/** Where the figures in full and the templates are when they do not stand behind the plan. */
const elsewhere = (part: PlanPart, paper: Paper) =>
  part === 'appendix apart'
    ? [{ title: 'Appendix and templates', place: 'on request', pages: `${appendixName(paper)}` }]
    : part === 'appendix left out'
      ? [{ title: 'Templates at full size', place: 'at the saw', pages: 'plan/templates.pdf' }]
      : [];

/** The file an appendix is written to when it stands by itself. */
export const appendixName = (paper: Paper): string => `plan/appendix.${paper.toLowerCase()}.pdf`;

/** The templates whole, each on a sheet of its own size. */
export const planTemplates = ({ parts, templates }: PlanContent): readonly Sheet[] =>
  templates.map(({ artwork }) => plotterSheet(artwork, commonTo(parts), parts.printScale));

/** What all sheets of a plan have in common. */
const commonTo = (parts: PlanParts): SheetSet => ({
  design: parts.solids.design.title,
  number: parts.solids.design.name.slice(0, 10),
  revision: parts.revision,
  units: parts.units,
  projection: parts.projection,
  ...(parts.stamp === undefined ? {} : { stamp: parts.stamp }),
  ...(parts.owner === undefined ? {} : { owner: parts.owner }),
  ...(parts.date === undefined ? {} : { date: parts.date }),
});

const printed = (template: TiledTemplate | undefined): number =>
  template?.plan.tiles.filter(({ number }) => number !== undefined).length ?? 0;

import { plotterSheet, type TiledTemplate, tileSheets } from '../printed-template/index.js';
import {
  type Draft,
  finishSheets,
  movedEntities,
  type Orientation,
  type Paper,
  pageOf,
  type Sheet,
  type SheetSet,
} from '../sheet/index.js';
import { coverPage } from './cover-page.js';
import type { PlanContent } from './plan-content.js';
import type { PlanParts } from './plan-parts.js';
import { scalePage } from './scale-page.js';

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

/** The plan on a paper: cover and print test first, then every section; numbered, framed, with its outline. */
export function planSheets(content: PlanContent, paper: Paper): PlanSet {
  const { parts, sections } = content;
  const { design } = parts.solids;
  const counts = sections.map(({ drafts, template }) => drafts.length + printed(template));
  const starts = counts.map((_, i) => 2 + counts.slice(0, i).reduce((sum, one) => sum + one, 0));
  const total = 2 + counts.reduce((sum, one) => sum + one, 0);
  const set: SheetSet = { ...commonTo(parts), total };
  const listed = [
    { title: 'Print test', page: 2 },
    ...sections.map(({ title }, i) => ({ title, page: starts[i]! + 1 })),
  ];
  const cover = coverPage(
    {
      solids: parts.solids,
      picture: content.picture,
      size: content.size,
      summary: parts.summary,
      units: parts.units,
      contents: listed,
    },
    paper,
  );
  const sheets = [
    ...finishSheets([cover, scalePage(paper, parts.printScale)], set),
    ...sections.flatMap((section, i) => {
      const before = starts[i]!;
      const drafts = section.drafts.map((draft) => onPaper(draft, paper));
      return [
        ...finishSheets(drafts, { ...set, before }),
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
    title: `${design.title}, plan for ${paper}`,
    sheets,
    entries: [
      { title: 'Cover', sheet: 0 },
      { title: 'Print test', sheet: 1 },
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

/** A draft set on another paper: both show the same live area, in another place of the sheet. */
function onPaper(draft: Draft, paper: Paper): Draft {
  const orientation: Orientation = draft.page.width > draft.page.height ? 'landscape' : 'portrait';
  const page = pageOf(paper, orientation);
  const by = [page.live.minX - draft.page.live.minX, page.live.minY - draft.page.live.minY] as const;
  return by[0] === 0 && by[1] === 0 ? draft : { ...draft, page, entities: movedEntities(draft.entities, by) };
}

import { WORLD } from '../frame/index.js';
import { segments } from '../profile/index.js';
import type { Aid } from '../shop/index.js';
import { allSolids, type BoardSolid, boardBody, type Solids, stockBody } from '../solid/index.js';
import { assemblyDrawing } from './assembly-drawing.js';
import { boardDrawing, type DrawingOptions, drawableOf } from './board-drawing.js';
import { cardFigure } from './card-figure.js';
import { clampFigure } from './clamp-figure.js';
import { coverPage } from './cover-page.js';
import { featureTable } from './feature-table.js';
import { figureRows } from './figure-row.js';
import { type Flowed, flow } from './flow.js';
import { type Block, heading, paragraph, tableBlock } from './flow-block.js';
import { glueFigure } from './glue-figure.js';
import { jointDetail, jointKinds } from './joint-detail.js';
import { layoutFigure } from './layout-figure.js';
import { movedEntities } from './moved.js';
import { type Orientation, type Paper, pageOf } from './page.js';
import { explodedSheet, isometricView } from './picture.js';
import type { PlanParts } from './plan-parts.js';
import { templatesOf } from './plan-templates.js';
import { checkBlocks, finishBlocks, materialBlocks, tenonBlocks, toolBlocks } from './plan-words.js';
import { plotterSheet } from './plotter-sheet.js';
import { blocksOf, sectionsOf } from './prose.js';
import { scalePage } from './scale-page.js';
import type { Sheet } from './sheet.js';
import { templateHead } from './template-head.js';
import { onBlank } from './template-places.js';
import { type TiledTemplate, tileSheets } from './tile-sheets.js';
import { type Draft, finishSheets, type SheetSet } from './title-block.js';
import type { View } from './view.js';

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

interface Section {
  readonly title: string;
  readonly drafts: readonly Draft[];
  /** Draft numbers within the section that get an entry of their own. */
  readonly parts: readonly { readonly title: string; readonly at: number }[];
  readonly template?: TiledTemplate;
}

/** A plan before it is set on a paper: whatever takes time is done once for all papers. */
export interface PlanContent {
  readonly parts: PlanParts;
  readonly picture: View;
  readonly size: readonly [number, number, number];
  readonly sections: readonly Section[];
  readonly templates: readonly TiledTemplate[];
}

/** All pages of a plan but those that name the paper, laid out on A4; {@link planSheets} sets them on any paper. */
export function planContent(parts: PlanParts): PlanContent {
  const { solids, papers, units, projection } = parts;
  const options = { paper: 'A4' as const, units, projection };
  const cutter = solids.design.cutter;
  const picture = isometricView(solids);
  const boards = boardGroups([...solids.boards.values()], options);
  const aids = shapedAids(solids, papers.aids);
  const joints = jointKinds(solids).map((kind) => {
    const draft = jointDetail(solids, kind, options);
    return { title: draft.title, drafts: [draft] };
  });
  const templates = templatesOf({
    boards: solids.design.boards.map(({ board }) => board),
    shop: papers.shop,
    cutter,
    units,
    ...(parts.bush === undefined ? {} : { bush: parts.bush }),
  });
  return {
    parts,
    picture,
    size: overall(solids),
    templates,
    sections: [
      prose('Tools, cutters and router', 'tools', 'portrait', toolBlocks(solids, papers, units)),
      prose('Materials', 'materials', 'landscape', [...materialBlocks(papers, units), ...layouts(parts)]),
      drawings('Assembly and exploded view', [
        { title: 'assembly', drafts: [assemblyDrawing(solids, options)] },
        { title: 'exploded view', drafts: [explodedSheet(solids, options)] },
      ]),
      drawings('Boards', boards),
      ...when(aids.length > 0, () => drawings('Pieces to hold the work', boardGroups(aids, options))),
      ...(joints.length > 0 ? [drawings('Joints', joints)] : []),
      ...when(papers.cards.length > 0, () => prose('Set-up cards', 'set-up', 'portrait', cardBlocks(parts))),
      prose('Order of work', 'order', 'landscape', blocksOf(parts.texts.order)),
      ...when(papers.tenons.length > 0, () =>
        prose('Tenons', 'tenons', 'landscape', tenonBlocks(papers, units)),
      ),
      ...when(solids.design.joints.length > 0, () =>
        prose('Glue-up', 'glue-up', 'landscape', glueBlocks(parts, picture)),
      ),
      prose('Finishing', 'finishing', 'portrait', finishBlocks(solids)),
      prose(
        'Results of the checks',
        'checks',
        'landscape',
        checkBlocks(parts.findings, parts.checks, papers),
      ),
      ...templates.map((tiled) => ({
        ...prose(
          `Template: ${tiled.artwork.board.name}`,
          `about-template-${tiled.artwork.board.id}`,
          'portrait',
          templateHead(tiled, units, cutter, parts.bush),
        ),
        parts: [],
        template: tiled,
      })),
    ],
  };
}

/** A section that is left out where there is nothing to say. */
const when = (is: boolean, section: () => Section): readonly Section[] => (is ? [section()] : []);

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

/** The same draft on another paper: both show the same live area, in another place of the sheet. */
function onPaper(draft: Draft, paper: Paper): Draft {
  const orientation: Orientation = draft.page.width > draft.page.height ? 'landscape' : 'portrait';
  const page = pageOf(paper, orientation);
  const by = [page.live.minX - draft.page.live.minX, page.live.minY - draft.page.live.minY] as const;
  return by[0] === 0 && by[1] === 0 ? draft : { ...draft, page, entities: movedEntities(draft.entities, by) };
}

/** Text pages. */
function prose(title: string, id: string, orientation: Orientation, blocks: readonly Block[]): Section {
  const page = pageOf('A4', orientation);
  const { pages, headings }: Flowed = flow(blocks, drawableOf(page));
  return {
    title,
    parts: headings.filter(({ level }) => level === 2).map(({ text, page: at }) => ({ title: text, at })),
    drafts: pages.map((entities, i) => ({
      id: `${id}-${i + 1}`,
      title: pages.length > 1 ? `${title}, ${i + 1} of ${pages.length}` : title,
      page,
      documentType: 'text',
      scale: undefined,
      entities,
      cautions: [],
    })),
  };
}

/** Pieces made to hold the work that are more than a plain block: wedges, templates with an opening. */
function shapedAids(solids: Solids, aids: readonly Aid[]): readonly BoardSolid[] {
  const { kernel } = solids;
  return aids
    .map(({ board }) => board)
    .filter(
      (board) =>
        board.bevels.length > 0 ||
        board.openings.length > 0 ||
        board.holes.length > 0 ||
        !segments(board.outline).every((piece) => onBlank(board, piece)),
    )
    .map((board): BoardSolid => {
      const stock = kernel.keep(stockBody(kernel, board));
      const own = kernel.keep(boardBody(kernel, board, stock));
      return { kind: 'board', id: board.id, board, place: WORLD, stock, own, body: own };
    });
}

/** Every board's drawing; tables that do not fit beside them follow together, their cells broken and not cut. */
function boardGroups(solids: readonly BoardSolid[], options: DrawingOptions) {
  const drawn = solids.map((solid) => ({
    board: solid.board,
    drafts: boardDrawing(solid, options),
  }));
  const apart = drawn.filter(({ drafts }) => drafts.length > 1).map(({ board }) => board);
  const tables = prose(
    'cuts of the boards',
    `${solids[0]?.id ?? 'board'}-cuts`,
    'landscape',
    apart.flatMap((board) => [
      heading(`${board.name}: cuts`),
      tableBlock(featureTable(board, options.units)),
    ]),
  );
  return [
    ...drawn.map(({ board, drafts }) => ({ title: board.name, drafts: drafts.slice(0, 1) })),
    ...(apart.length > 0 ? [{ title: tables.title, drafts: tables.drafts }] : []),
  ];
}

/** Drawings that are there already, each with its entry. */
function drawings(
  title: string,
  groups: readonly { readonly title: string; readonly drafts: readonly Draft[] }[],
): Section {
  let at = 0;
  const parts = groups.map((group) => {
    const part = { title: group.title, at };
    at += group.drafts.length;
    return part;
  });
  return { title, parts, drafts: groups.flatMap(({ drafts }) => drafts) };
}

/** The set-up cards, a page each, with a picture of the set-up before the figures. */
function cardBlocks({ texts, papers, units }: PlanParts): readonly Block[] {
  return sectionsOf(blocksOf(texts.setup)).flatMap(({ heading: title, blocks }): readonly Block[] => {
    const card = papers.cards.find(({ id }) => title?.startsWith(`${id}:`));
    if (!card) return blocks;
    return [{ kind: 'new page' }, blocks[0]!, cardFigure(card, units), ...blocks.slice(1)];
  });
}

/** The glue-up, every stage with pictures of its steps. */
function glueBlocks({ texts, papers, solids }: PlanParts, picture: View): readonly Block[] {
  const room = drawableOf(pageOf('A4', 'landscape'));
  return sectionsOf(blocksOf(texts.glueUp)).flatMap(({ heading: title, blocks }): readonly Block[] => {
    const stage = papers.glueUp.stages.find(({ number }) => title?.startsWith(`Stage ${number}:`));
    if (!stage) return blocks;
    const figures = papers.glueUp.steps
      .filter((step) => step.stage === stage.number)
      .map((step) => glueFigure(solids, papers.glueUp, step));
    const clamped = clampFigure(picture, papers.clamps, stage.number);
    return [...blocks, ...figureRows([...figures, ...(clamped ? [clamped] : [])], room.maxX - room.minX)];
  });
}

/** Every sheet and board of stock with its parts, then its cuts in order. */
function layouts({ papers, layoutRows }: PlanParts): readonly Block[] {
  return papers.layouts.flatMap((layout, i) => [
    heading(`Layout: ${layout.title}`),
    ...layout.plan.pieces.flatMap((piece, k): readonly Block[] => [
      ...(layout.plan.pieces.length > 1
        ? [paragraph(`Piece ${k + 1} of ${layout.plan.pieces.length}.`)]
        : []),
      layoutFigure(piece, layout),
      ...inTwoColumns(layoutRows[i]?.[k] ?? []),
    ]),
    ...layout.notes.map((text): Block => ({ kind: 'bullet', text })),
  ]);
}

/** Cuts in their order, down the left column and then the right. */
function inTwoColumns(rows: readonly string[]): readonly Block[] {
  if (rows.length === 0) return [];
  const half = Math.ceil(rows.length / 2);
  return [
    tableBlock([
      ['cuts in order', ''],
      ...Array.from({ length: half }, (_, i) => [rows[i]!, rows[half + i] ?? '']),
    ]),
  ];
}

/** Width, depth and height over all boards as they stand, mm; bought pieces left out. */
function overall(solids: Solids): readonly [number, number, number] {
  const boxes = allSolids(solids)
    .filter(({ kind }) => kind === 'board')
    .map(({ body }) => body.boundingBox());
  const size = (axis: 0 | 1 | 2): number =>
    Math.max(...boxes.map(({ max }) => max[axis])) - Math.min(...boxes.map(({ min }) => min[axis]));
  return [size(0), size(1), size(2)];
}

import { type Block, bearingPaper, glueUpPaper, orderPaper, setupPaper } from '../../shop/index.js';
import { allSolids, type Solids } from '../../solid/index.js';
import { drawableOf } from '../board/index.js';
import { assemblyDrawing, explodedSheet, isometricView, jointDetail, jointKinds } from '../figure/index.js';
import { type TiledTemplate, templateHead } from '../printed-template/index.js';
import { type Orientation, pageOf } from '../sheet/index.js';
import type { View } from '../view/index.js';
import { checkBlocks } from './check-blocks.js';
import { finishBlocks } from './finish-blocks.js';
import { materialBlocks } from './material-blocks.js';
import { boardGroups, shapedAids } from './plan-boards.js';
import { layoutBlocks, withFigures } from './plan-figures.js';
import type { PlanParts } from './plan-parts.js';
import { drawings, type Section, textPages, when } from './plan-section.js';
import { templatesOf } from './plan-templates.js';
import { rangeBlocks } from './range-blocks.js';
import { tenonBlocks } from './tenon-blocks.js';
import { toolBlocks } from './tool-blocks.js';

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
  const paper = { ...papers, design: solids.design };
  const picture = isometricView(solids);
  const boards = boardGroups([...solids.boards.values()], options);
  const aids = shapedAids(solids, papers.aids);
  const joints = jointKinds(solids).map((kind) => {
    const draft = jointDetail(solids, kind, options);
    return { title: draft.title, drafts: [draft] };
  });
  const templates = templatesOf({
    boards: solids.design.boards.map(({ board }) => board),
    cutter,
    units,
    ...(parts.bush === undefined ? {} : { bush: parts.bush }),
  });
  const section = (title: string, id: string, orientation: Orientation, blocks: readonly Block[]) => {
    const { minX, maxX } = drawableOf(pageOf('A4', orientation));
    return textPages(title, id, orientation, withFigures(blocks, parts, picture, maxX - minX));
  };
  return {
    parts,
    picture,
    size: overall(solids),
    templates,
    sections: [
      section('Tools, cutters and router', 'tools', 'portrait', toolBlocks(solids, papers, units)),
      section('Materials', 'materials', 'landscape', [
        ...materialBlocks(papers, units),
        ...layoutBlocks(papers, parts.layoutRows),
      ]),
      drawings('Assembly and exploded view', [
        { title: 'assembly', drafts: [assemblyDrawing(solids, options)] },
        { title: 'exploded view', drafts: [explodedSheet(solids, options)] },
      ]),
      drawings('Boards', boards),
      ...when(aids.length > 0, () => drawings('Pieces to hold the work', boardGroups(aids, options))),
      ...(joints.length > 0 ? [drawings('Joints', joints)] : []),
      ...when(papers.cards.length > 0, () =>
        section('Set-up cards', 'set-up', 'portrait', setupPaper(paper)),
      ),
      section('Order of work', 'order', 'landscape', orderPaper(paper)),
      ...when(papers.tenons.length > 0, () =>
        section('Tenons', 'tenons', 'landscape', tenonBlocks(papers, units)),
      ),
      ...when(solids.design.joints.length > 0, () =>
        section('Glue-up', 'glue-up', 'landscape', glueUpPaper(paper)),
      ),
      ...when(parts.ranges !== undefined, () =>
        textPages('Dimensions you may change', 'ranges', 'portrait', rangeBlocks(parts.ranges!, units)),
      ),
      section('What it bears', 'bears', 'portrait', bearingPaper(paper)),
      section('Finishing', 'finishing', 'portrait', finishBlocks(solids)),
      section(
        'Results of the checks',
        'checks',
        'landscape',
        checkBlocks(parts.findings, parts.checks, papers),
      ),
      ...templates.map((tiled) => ({
        ...textPages(
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

/** Width, depth and height over all boards as they stand, mm; bought pieces left out. */
function overall(solids: Solids): readonly [number, number, number] {
  const boxes = allSolids(solids)
    .filter(({ kind }) => kind === 'board')
    .map(({ body }) => body.boundingBox());
  const size = (axis: 0 | 1 | 2): number =>
    Math.max(...boxes.map(({ max }) => max[axis])) - Math.min(...boxes.map(({ min }) => min[axis]));
  return [size(0), size(1), size(2)];
}

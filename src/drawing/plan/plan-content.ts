import {
  type Block,
  bearingPaper,
  glueUpPaper,
  heading,
  orderPaper,
  paragraph,
  type ShopPapers,
  setupParts,
} from '../../shop/index.js';
import { allSolids, type Solids } from '../../solid/index.js';
import { isometricView, pieceMap, stickFigures } from '../figure/index.js';
import { type FlowBlock, together } from '../flow/index.js';
import { type TiledTemplate, templateHead } from '../printed-template/index.js';
import { setUpPicture } from '../set-up/index.js';
import type { Draft, DrawingUnits } from '../sheet/index.js';
import type { View } from '../view/index.js';
import { aidBlocks, shapedAids } from './aid-blocks.js';
import { cardBlocks } from './card-blocks.js';
import { assemblyBlocks, boardBlocks, jointBlocks, pieceBlocks } from './drawing-blocks.js';
import { finishBlocks, sharpBlocks } from './finish-blocks.js';
import { materialBlocks, sawBlocks } from './material-blocks.js';
import { withFigures } from './plan-figures.js';
import type { PlanParts } from './plan-parts.js';
import { ROOM, type Section, section } from './plan-section.js';
import { templatesOf } from './plan-templates.js';
import { printTest } from './print-test.js';
import { rangeBlocks } from './range-blocks.js';
import { bearingBlocks, resultBlocks } from './result-blocks.js';
import { stripBlocks, tenonBlocks } from './tenon-blocks.js';
import { toolBlocks } from './tool-blocks.js';

/** A plan before it is set on a paper: whatever takes time is done once for all papers. */
export interface PlanContent {
  readonly parts: PlanParts;
  readonly picture: View;
  readonly size: readonly [number, number, number];
  /** In the order of the work. */
  readonly sections: readonly Section[];
  /** What is printed on request: everything in full, the templates last. */
  readonly appendix: readonly Section[];
  readonly templates: readonly TiledTemplate[];
}

/** All pages of a plan but those that name the paper, laid out on A4; {@link planSheets} sets them on any paper. */
export function planContent(parts: PlanParts): PlanContent {
  const { solids, papers, units, projection } = parts;
  const { design } = solids;
  const options = { units, projection };
  // every page tells its revision
  const paper = { ...papers, design, revision: '' };
  const picture = isometricView(solids);
  const drawn = (blocks: readonly Block[]) => withFigures(blocks, parts, picture, ROOM.width);
  const templates = templatesOf({
    boards: design.boards.map(({ board }) => board),
    cutter: design.cutter,
    units,
    ...(parts.bush === undefined ? {} : { bush: parts.bush }),
  });
  const setUp = setupParts(paper);
  const bearing = bearingPaper(paper);
  const aids = shapedAids(solids, papers.aids);
  const maps = { sided: pieceMap(solids, true), plain: pieceMap(solids, false) };
  // where boards are named by their marks, a map tells them; a board's own drawing tells its sides
  const named = (
    title: string,
    id: string,
    place: string,
    blocks: readonly FlowBlock[],
    map: keyof typeof maps = 'sided',
  ) => section(title, id, place, blocks, maps[map]);
  const sections: readonly (Section | false)[] = [
    section('The piece and the tools', 'piece', 'first of all', [
      ...pieceBlocks(solids, units, 'drawn apart'),
      ...assemblyBlocks(solids, options),
      ...drawn(toolBlocks(solids, papers, units)),
    ]),
    named(
      'Wood and print test',
      'wood',
      'before you begin',
      [
        ...drawn(materialBlocks(papers, units)),
        together([heading('Print test'), printTest(ROOM.width, parts.printScale)], ROOM.width),
      ],
      'plain',
    ),
    named(
      'Boards',
      'boards',
      'at the bench',
      [...boardBlocks(solids, options, papers), ...aidBlocks(aids, options)],
      'plain',
    ),
    design.joints.length > 0 &&
      named('Joints', 'joints', 'at the bench', [heading('Joints', 1), ...jointBlocks(solids, options)]),
    papers.cards.length + papers.grooves.length > 0 &&
      named('Set-up cards', 'set-up', 'at the router', [
        ...drawn(setUp.before),
        ...setUp.cards.map((told, i): FlowBlock => {
          const blocks = drawn(told);
          const card = papers.cards[i];
          return together(
            card
              ? cardBlocks(blocks, card, units, (room) => setUpPicture(solids, papers, card, room))
              : blocks,
            ROOM.width,
            card ? card.cuts.map(({ board }) => board) : [],
          );
        }),
      ]),
    named('Order of work', 'order', 'always', drawn(orderPaper(paper))),
    named(design.joints.length > 0 ? 'Tenons, glue-up and finish' : 'Finish', 'glue-up', 'at the clamps', [
      ...(papers.tenons.length > 0 ? drawn(tenonBlocks(papers, units)) : []),
      ...(design.joints.length > 0 ? drawn(glueUpPaper(paper)) : []),
      ...drawn([...finishBlocks(units), ...sharpBlocks(solids)]),
      ...drawn(bearingBlocks(papers, bearing)),
      ...resultBlocks(parts.findings, parts.checks),
    ] as readonly FlowBlock[]),
  ];
  return {
    parts,
    picture,
    size: overall(solids),
    templates,
    sections: sections.filter((one) => one !== false),
    appendix: [
      section('Appendix: the figures in full', 'appendix', 'on request', [
        heading('Appendix', 1),
        ...drawn(sawBlocks(papers, parts.layoutRows)),
        ...(papers.strips.length > 0 ? drawn(stripBlocks(papers, units)) : []),
        ...drawn(setUp.behind),
        ...stickBlocks(papers.sticks),
        heading('Checks on the solids'),
        paragraph(`${parts.checks.join(', ')}.`),
        ...drawn(bearing),
        ...(parts.ranges === undefined ? [] : rangeBlocks(parts.ranges, units)),
      ]),
      ...templates.map((tiled) => ({
        ...section(
          `Template: ${tiled.artwork.board.name}`,
          `about-template-${tiled.artwork.board.id}`,
          'at the saw',
          templateHead(tiled, units, design.cutter, parts.bush),
        ),
        parts: [],
        template: tiled,
      })),
    ],
  };
}

/** The story sticks at full size: the first goes with what is said of all. */
const stickBlocks = (sticks: ShopPapers['sticks']): readonly FlowBlock[] =>
  sticks.length === 0
    ? []
    : [
        heading('Story sticks at full size'),
        paragraph(
          'Cut out, join the pieces at the dashed lines, and measure the first against a steel rule: mark every board from its stick, never from another board.',
        ),
        ...sticks.flatMap(stickFigures),
      ];

/** Width, depth and height over all boards as they stand, mm; bought pieces left out. */
function overall(solids: Solids): readonly [number, number, number] {
  const boxes = allSolids(solids)
    .filter(({ kind }) => kind === 'board')
    .map(({ body }) => body.boundingBox());
  const size = (axis: 0 | 1 | 2): number =>
    Math.max(...boxes.map(({ max }) => max[axis])) - Math.min(...boxes.map(({ min }) => min[axis]));
  return [size(0), size(1), size(2)];
}

/** The piece put together with its list of parts, without anything else: how a design was understood. */
export const numberedDrafts = (solids: Solids, units: DrawingUnits): readonly Draft[] =>
  section('picture', 'picture', '', pieceBlocks(solids, units, 'put together')).drafts;

import {
  cutStrip,
  type FlowBlock,
  laidFigure,
  movedEntities,
  type Sheet,
  STRIP_KEY,
  scaleBar,
  stacked,
} from '../../drawing/index.js';
import { INCH } from '../../length/index.js';
import { heading, type LaidStock, list, paragraph, type StockLayout } from '../../shop/index.js';
import { sheetSvg } from '../svg/index.js';
import { cutLine, type LayoutPaper, sizeWords } from './layout-words.js';

/** Round everything, mm. */
const MARGIN = 10;

/** Least width of the paper, so that the words below a small drawing find room, mm. */
const LEAST_WIDTH = 190;

/**
 * The layouts as one SVG file in mm: a drawing for each sheet or board, all to one scale, which is stated and shown by a bar,
 * and below each the order of its cuts in small pictures.
 *
 * Everything is told by line and word, nothing by colour.
 */
export function sheetsSvg(layouts: readonly StockLayout[], paper: LayoutPaper): string {
  const longest = Math.max(0, ...layouts.flatMap(({ plan }) => plan.pieces.map(({ stock }) => stock.length)));
  const scale = longest > 1250 ? 10 : longest > 500 ? 5 : 2;
  const width = Math.max(LEAST_WIDTH, longest / scale + 2 * MARGIN);
  const room = width - 2 * MARGIN;
  const blocks = [
    ...headOf(scale, paper),
    ...(layouts.length === 0 ? [paragraph('Nothing to lay out.')] : [paragraph(STRIP_KEY)]),
    ...layouts.flatMap((layout) => [
      ...layout.plan.pieces.flatMap((piece, i) => pieceBlocks(piece, layout, i, scale, room, paper)),
      ...(layout.notes.length > 0 ? [list(layout.notes)] : []),
    ]),
  ];
  const { entities, height: high } = stacked(blocks, room);
  const height = high + 2 * MARGIN;
  const sheet: Sheet = {
    id: 'layouts',
    title: `Layouts, revision ${paper.revision}`,
    width,
    height,
    scale: `1:${scale}`,
    entities: movedEntities(entities, [MARGIN, height - MARGIN]),
  };
  return sheetSvg(sheet);
}

function headOf(scale: number, { say, revision }: LayoutPaper): readonly FlowBlock[] {
  const bar = say.units === 'mm' ? 100 : 4 * INCH;
  return [
    heading(`Layouts, drawn 1 : ${scale}`, 1),
    paragraph(
      `revision ${revision}; the bar is ${say.length(bar)} of paper, ${say.length(bar * scale)} of stock`,
    ),
    scaleBar(bar),
  ];
}

function pieceBlocks(
  piece: LaidStock,
  layout: StockLayout,
  index: number,
  scale: number,
  room: number,
  { say }: LayoutPaper,
): readonly FlowBlock[] {
  const { stock, parts, cuts } = piece;
  const count = layout.plan.pieces.length;
  return [
    heading(
      `${layout.title}${count > 1 ? `, piece ${index + 1} of ${count}` : ''}: ${sizeWords(stock, say)}`,
    ),
    paragraph(
      `kerf ${say.fine(layout.kerf)}, ${layout.verdict === 'passed' ? 'as the shop file says' : 'not verified'}${layout.grainLocked ? '; grain along the length' : ''}; reference corner at the lower left`,
    ),
    laidFigure(piece, layout, say.rule, 1 / scale),
    ...(cuts.length > 0 ? [cutStrip(piece, layout, say.rule, room)] : []),
    list([
      ...parts.map((part) => {
        const name = layout.parts.find(({ mark }) => mark === part.id)?.name ?? part.id;
        return `${part.id}  ${name}: ${sizeWords(part, say)}${part.turned ? ', turned' : ''}`;
      }),
      ...cuts.map((cut) => cutLine(cut, say)),
    ]),
  ];
}

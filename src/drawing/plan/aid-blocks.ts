import { WORLD } from '../../frame/index.js';
import { once } from '../../once.js';
import { segments } from '../../profile/index.js';
import { type Aid, heading } from '../../shop/index.js';
import { type BoardSolid, boardOf, type Solids, stockOf } from '../../solid/index.js';
import { boardFigure, type DrawingOptions, featureTable } from '../board/index.js';
import { type DrawnFigure, type FlowBlock, figureRows, heightOf, withCaption } from '../flow/index.js';
import { onBlank } from '../printed-template/index.js';
import { blankWords } from '../sheet/index.js';
import { ROOM } from './plan-section.js';

/** Pieces made to hold the work that are more than a plain block: wedges, templates with an opening. */
export function shapedAids(solids: Solids, aids: readonly Aid[]): readonly BoardSolid[] {
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
      const own = boardOf(kernel, board);
      return {
        kind: 'board',
        id: board.id,
        board,
        place: WORLD,
        stock: stockOf(kernel, board),
        own,
        body: own,
      };
    });
}

/** How high an aid's drawing may be, mm, as large as the page lets them all be: one to a row, else two side by side. */
const ROW_HEIGHTS: readonly number[] = [130, 100, 84, 70];
const AID_WIDTH = 88;
const AID_HEIGHTS: readonly number[] = [58, 50, 45, 40, 36, 32];

/** So many aids are more than a page holds beside what stands on it. */
const MANY_AIDS = 4;

/** No aid is drawn smaller: it may be as high as this instead, mm. */
const LEAST_SCALE = 1 / 10;
const TALL_AIDS: readonly number[] = [52, 60, 80];

/** Pieces to hold the work, each with its name and what is cut above it. */
export function aidBlocks(aids: readonly BoardSolid[], options: DrawingOptions): readonly FlowBlock[] {
  if (aids.length === 0) return [];
  const drawings = aids.map(({ board }, i) => {
    const [, ...rows] = featureTable(board, options.units);
    const cuts = rows.map((row) => row.filter((cell) => cell !== '').join(', ')).join('; ');
    return { board, cuts, drawing: boardFigure(aids[i]!, options, 'telling') };
  });
  const blocks = (height: number, width = AID_WIDTH): readonly FlowBlock[] => [
    heading('Pieces to hold the work', 1),
    ...figureRows(
      drawings.flatMap(({ board, cuts, drawing }): readonly DrawnFigure[] => {
        const figure = [height, ...TALL_AIDS]
          .map((most) => drawing({ width, height: most }))
          .find((one) => one && one.scale.factor >= LEAST_SCALE);
        if (!figure) return [];
        const size = `${blankWords(board.blank, options.units)}, scale ${figure.scale.name}`;
        return [withCaption(figure, board.name, [size, ...(cuts === '' ? [] : [cuts])])];
      }),
      ROOM.width,
    ),
  ];
  if (aids.length > MANY_AIDS) return blocks(AID_HEIGHTS[1]!);
  const tried = once(() => [
    ...ROW_HEIGHTS.map((height) => blocks(height, ROOM.width)),
    ...AID_HEIGHTS.map((height) => blocks(height)),
  ]);
  const fit = (height: number) => tried().find((one) => heightOf(one, ROOM.width) <= height);
  return [{ kind: 'whole', fit }];
}

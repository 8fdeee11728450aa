import { WORLD } from '../../frame/index.js';
import { segments } from '../../profile/index.js';
import { type Aid, heading, table } from '../../shop/index.js';
import { type BoardSolid, boardBody, type Solids, stockBody } from '../../solid/index.js';
import { boardDrawing, type DrawingOptions, featureTable } from '../board/index.js';
import { onBlank } from '../printed-template/index.js';
import { textPages } from './plan-section.js';

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
      const stock = kernel.keep(stockBody(kernel, board));
      const own = kernel.keep(boardBody(kernel, board, stock));
      return { kind: 'board', id: board.id, board, place: WORLD, stock, own, body: own };
    });
}

/** Every board's drawing; tables that do not fit beside them follow together, their cells broken and not cut. */
export function boardGroups(solids: readonly BoardSolid[], options: DrawingOptions) {
  const drawn = solids.map((solid) => ({
    board: solid.board,
    drafts: boardDrawing(solid, options),
  }));
  const apart = drawn.filter(({ drafts }) => drafts.length > 1).map(({ board }) => board);
  const tables = textPages(
    'cuts of the boards',
    `${solids[0]?.id ?? 'board'}-cuts`,
    'landscape',
    apart.flatMap((board) => {
      const [head = [], ...rows] = featureTable(board, options.units);
      return [heading(`${board.name}: cuts`), table(head, rows)];
    }),
  );
  return [
    ...drawn.map(({ board, drafts }) => ({ title: board.name, drafts: drafts.slice(0, 1) })),
    ...(apart.length > 0 ? [{ title: tables.title, drafts: tables.drafts }] : []),
  ];
}

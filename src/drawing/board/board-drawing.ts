import { type BoardSolid, featureEdges } from '../../solid/index.js';
import type { DrawingUnits, Projection } from '../sheet/index.js';
import { viewOf } from '../view/index.js';
import { boardLayout, type DrawnView } from './board-layout.js';
import { boardViews, isTelling } from './board-views.js';
import { type Scalable, scalable } from './scaled-figure.js';

/** How drawings are made. */
export interface DrawingOptions {
  readonly units: DrawingUnits;
  readonly projection: Projection;
}

/**
 * The drawing of one board: its face, edge and end with hidden lines, every feature set out from the reference edge and end.
 *
 * @param views `telling`: an edge or end that shows neither a cut nor a bevel is left out, for its size is said beside the drawing
 */
export function boardFigure(
  { board, own }: BoardSolid,
  { units, projection }: DrawingOptions,
  views: 'all' | 'telling' = 'all',
): Scalable {
  const part = { id: board.id, solid: featureEdges(own) };
  const drawn = boardViews(board, projection)
    .filter((view) => views === 'all' || isTelling(board, view))
    .map((view): DrawnView => ({ view, lines: viewOf([part], view.frame, { hidden: true }) }));
  return scalable(`${board.name} in views with its dimensions; the table tells every cut.`, ({ factor }) =>
    boardLayout(board, drawn, factor, [0, 0], units),
  );
}

import { type BoardSolid, featureEdges } from '../../solid/index.js';
import type { DrawingUnits, Projection, Scale } from '../sheet/index.js';
import { viewOf } from '../view/index.js';
import { boardLayout, type DrawnView } from './board-layout.js';
import { boardViews, isTelling } from './board-views.js';
import { largestFigure, type ScaledFigure } from './scaled-figure.js';

/** How drawings are made. */
export interface DrawingOptions {
  readonly units: DrawingUnits;
  readonly projection: Projection;
}

/**
 * The drawing of one board: its face, edge and end with hidden lines, every feature set out from the reference edge and end.
 *
 * @param room mm on the sheet
 * @param views `telling`: an edge or end that shows neither a cut nor a bevel is left out, for its size is said beside the drawing
 * @returns at the largest scale that fits; undefined when none does
 */
export function boardFigure(
  solid: BoardSolid,
  options: DrawingOptions,
  room: { readonly width: number; readonly height: number },
  views: 'all' | 'telling' = 'all',
): ScaledFigure | undefined {
  const all = drawnViews(solid, options.projection);
  const drawn = views === 'all' ? all : all.filter(({ view }) => isTelling(solid.board, view));
  return largestFigure(room, (scale, fits) => {
    const at = layoutsAt(solid, drawn, options, scale);
    // labels take time to place, and never make it smaller
    return fits(at(false).box) ? at(true).entities : undefined;
  });
}

type Layout = ReturnType<typeof boardLayout>;

/** The views and the room a board's drawings need are the same on every page. */
const known = new WeakMap<
  BoardSolid,
  { readonly views: Map<string, readonly DrawnView[]>; readonly layouts: Map<string, Layout> }
>();

function knownOf(solid: BoardSolid) {
  const found = known.get(solid) ?? { views: new Map(), layouts: new Map() };
  known.set(solid, found);
  return found;
}

function drawnViews(solid: BoardSolid, projection: Projection): readonly DrawnView[] {
  const { views } = knownOf(solid);
  const part = { id: solid.board.id, solid: featureEdges(solid.own) };
  const drawn =
    views.get(projection) ??
    boardViews(solid.board, projection).map(
      (view): DrawnView => ({ view, lines: viewOf([part], view.frame, { hidden: true }) }),
    );
  views.set(projection, drawn);
  return drawn;
}

const layoutsAt = (
  solid: BoardSolid,
  drawn: readonly DrawnView[],
  { units, projection }: DrawingOptions,
  { factor }: Scale,
): ((labelled: boolean) => Layout) => {
  const known = knownOf(solid).layouts;
  return (labelled) => {
    const key = `${factor} ${labelled} ${units} ${projection} ${drawn.length}`;
    const layout = known.get(key) ?? boardLayout(solid.board, drawn, factor, [0, 0], units, labelled);
    known.set(key, layout);
    return layout;
  };
};

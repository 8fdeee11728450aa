import type { Vec2 } from '../../frame/index.js';
import { type BoardSolid, featureEdges } from '../../solid/index.js';
import {
  BLOCK_HEIGHT,
  type Box,
  columnWidths,
  type Draft,
  type DrawingUnits,
  type Orientation,
  type Page,
  type Paper,
  type Projection,
  pageOf,
  ROW_HEIGHT,
  SCALES,
  type Scale,
  tableAt,
} from '../sheet/index.js';
import { viewOf } from '../view/index.js';
import { boardLayout, type DrawnView } from './board-layout.js';
import { boardViews } from './board-views.js';
import { featureTable } from './feature-table.js';

/** How drawings are made. */
export interface DrawingOptions {
  readonly paper: Paper;
  readonly units: DrawingUnits;
  readonly projection: Projection;
}

/** Kept free inside the frame, mm. */
const INSET = 4;

/** Between the views and a table, mm. */
const TABLE_GAP = 4;

const SET_OUT = 'Set out from the reference edge and end; do not measure the paper.';

/**
 * The drawing of one board: its face, edge and end with hidden lines, every feature set out from the reference edge and end,
 * and a table of what is cut.
 *
 * The largest scale at which all of it fits one sheet is taken; where the views alone could be twice as large, or the table is too long, the table
 * goes to sheets of its own.
 */
export function boardDrawing(solid: BoardSolid, options: DrawingOptions): readonly Draft[] {
  const { board } = solid;
  const drawn = drawnViews(solid, options.projection);
  const rows = featureTable(board, options.units);
  const at = layouts(board, drawn, options.units);
  const together = firstFit(at, options, rows);
  const alone = rows.length === 0 ? together : firstFit(at, options, []);
  const split =
    together === undefined || (alone !== undefined && alone.scale.factor >= 1.9 * together.scale.factor);
  const chosen = split ? alone : together;
  const common = {
    title: board.name,
    documentType: 'board drawing',
    material: board.material,
    cautions: [SET_OUT],
  };
  const page = chosen?.page ?? pageOf(options.paper, 'landscape');
  const first: Draft = {
    ...common,
    id: `board-${board.id}`,
    page,
    scale: chosen?.scale.name,
    entities: chosen?.entities ?? [],
  };
  return split ? [first, ...tableSheets(first, rows)] : [first];
}

/** The views of a board are the same on every paper. */
const viewsOf = new WeakMap<BoardSolid, Map<Projection, readonly DrawnView[]>>();

function drawnViews(solid: BoardSolid, projection: Projection): readonly DrawnView[] {
  const known = viewsOf.get(solid) ?? new Map<Projection, readonly DrawnView[]>();
  viewsOf.set(solid, known);
  const found = known.get(projection);
  if (found) return found;
  const part = { id: solid.board.id, solid: featureEdges(solid.own) };
  const drawn = boardViews(solid.board, projection).map(
    (view): DrawnView => ({ view, lines: viewOf([part], view.frame, { hidden: true }) }),
  );
  known.set(projection, drawn);
  return drawn;
}

type Layout = ReturnType<typeof boardLayout>;

/** Lays a board out at a scale and place, each once: with its table and alone the same ones are tried. */
function layouts(
  board: BoardSolid['board'],
  drawn: readonly DrawnView[],
  units: DrawingUnits,
): (scale: Scale, place: Vec2, labelled: boolean) => Layout {
  const known = new Map<string, Layout>();
  return (scale, place, labelled) => {
    const key = `${scale.factor} ${place.join(' ')} ${labelled}`;
    const layout = known.get(key) ?? boardLayout(board, drawn, scale.factor, place, units, labelled);
    known.set(key, layout);
    return layout;
  };
}

interface Fit {
  readonly page: Page;
  readonly scale: Scale;
  readonly entities: Draft['entities'];
}

/** The drawing at the largest scale that fits, with its table below or beside it; undefined when none does. */
function firstFit(
  at: ReturnType<typeof layouts>,
  options: DrawingOptions,
  rows: readonly (readonly string[])[],
): Fit | undefined {
  const pages = (['landscape', 'portrait'] as const).map((one: Orientation) => pageOf(options.paper, one));
  for (const scale of SCALES) {
    const { box: least } = at(scale, [0, 0], false);
    if (!pages.some((page) => arranged(least, rows, drawableOf(page)))) continue;
    const { box } = at(scale, [0, 0], true);
    for (const page of pages) {
      const place = arranged(box, rows, drawableOf(page));
      if (!place) continue;
      const { entities } = at(scale, place.views, true);
      const table = place.table ? [tableAt(place.table, rows)] : [];
      return { page, scale, entities: [...entities, ...table] };
    }
  }
  return undefined;
}

/** Where views and table go inside an area; undefined when they do not fit. */
function arranged(
  box: Box,
  rows: readonly (readonly string[])[],
  area: Box,
): { readonly views: Vec2; readonly table: Vec2 | undefined } | undefined {
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const [roomX, roomY] = [area.maxX - area.minX, area.maxY - area.minY];
  const tableWidth = columnWidths(rows).reduce((sum, one) => sum + one, 0);
  const tableHeight = rows.length * ROW_HEIGHT;
  const views = (x: number, y: number): Vec2 => [x - box.minX, y - box.minY];
  if (rows.length === 0) {
    if (width > roomX || height > roomY) return undefined;
    return {
      views: views(area.minX + (roomX - width) / 2, area.minY + (roomY - height) / 2),
      table: undefined,
    };
  }
  const below = height + TABLE_GAP + tableHeight;
  if (Math.max(width, tableWidth) <= roomX && below <= roomY) {
    const air = Math.min((roomY - below) / 3, 15);
    return {
      views: views(area.minX + (roomX - width) / 2, area.maxY - air - height),
      table: [area.minX + (roomX - tableWidth) / 2, area.minY + air + tableHeight],
    };
  }
  const beside = width + TABLE_GAP + tableWidth;
  if (beside > roomX || Math.max(height, tableHeight) > roomY) return undefined;
  return {
    views: views(area.minX, area.minY + (roomY - height) / 2),
    table: [area.maxX - tableWidth, area.minY + (roomY + tableHeight) / 2],
  };
}

/** What of a page is free inside the frame and above the title block. */
export const drawableOf = ({ live }: Page): Box => ({
  minX: live.minX + INSET,
  minY: live.minY + BLOCK_HEIGHT + INSET,
  maxX: live.maxX - INSET,
  maxY: live.maxY - INSET,
});

/** A table on as many sheets as it needs, each with its head. */
function tableSheets(first: Draft, rows: readonly (readonly string[])[]): readonly Draft[] {
  const page = pageOf(first.page.paper, 'landscape');
  const area = drawableOf(page);
  const [head, ...body] = rows;
  const most = Math.floor((area.maxY - area.minY) / ROW_HEIGHT) - 1;
  const widths = columnWidths(rows);
  const room = area.maxX - area.minX;
  const whole = widths.reduce((sum, width) => sum + width, 0);
  const fitted = widths.map((width) => width * Math.min(1, room / whole));
  return Array.from({ length: Math.ceil(body.length / most) }, (_, i) => ({
    ...first,
    id: `${first.id}-cuts-${i + 1}`,
    title: `${first.title}: cuts`,
    documentType: 'table',
    page,
    scale: undefined,
    entities: [tableAt([area.minX, area.maxY], [head!, ...body.slice(i * most, (i + 1) * most)], fitted)],
  }));
}

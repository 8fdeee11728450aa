import { exploded } from '../../assembly/index.js';
import { add, type Frame, type Vec2 } from '../../frame/index.js';
import { onceForEach } from '../../once.js';
import { allSolids, featureEdges, type Solids } from '../../solid/index.js';
import { type DrawingOptions, drawableOf } from '../board/index.js';
import {
  type Box,
  columnWidths,
  type Draft,
  pageOf,
  ROW_HEIGHT,
  roomOf,
  type SheetEntity,
  tableAt,
} from '../sheet/index.js';
import {
  lookingFrom,
  type SeenPart,
  VIEW_FRAMES,
  type View,
  viewBox,
  viewLines,
  viewOf,
  viewPoint,
  visibleSpots,
  type Wire,
} from '../view/index.js';
import { balloons } from './balloons.js';
import { partsList, partsTable } from './parts-list.js';

/** Every part of a design as it is seen, apart when `shifts` move it. */
export const seenParts = (
  solids: Solids,
  shifts: ReturnType<typeof exploded> = new Map(),
): readonly SeenPart[] =>
  allSolids(solids).map(({ id, body }) => {
    const shift = shifts.get(id);
    return { id, solid: featureEdges(body), ...(shift ? { shift } : {}) };
  });

/** The axis of every tenon, from its mortise in one board to that in the other, as far as they stand apart. */
const tenonAxes = (solids: Solids, shifts: ReturnType<typeof exploded>): readonly Wire[] =>
  solids.design.joints.flatMap((joint) =>
    joint.tenons.map(({ id, place }) => ({
      id,
      from: add(place.origin, shifts.get(joint.a)!),
      to: add(place.origin, shifts.get(joint.b)!),
    })),
  );

// pictures of a design are the same on every paper, on the page and by themselves

/** The isometric picture: what is seen of the design, without hidden lines. */
export const isometricView = onceForEach(
  (solids: Solids): View => viewOf(seenParts(solids), VIEW_FRAMES.isometric, { hidden: false }),
);

/** The piece drawn apart along its joints, with the axes of its tenons. */
export const explodedView = onceForEach((solids: Solids): View => {
  const shifts = exploded(solids.design);
  return viewOf(seenParts(solids, shifts), VIEW_FRAMES.isometric, {
    hidden: false,
    wires: tenonAxes(solids, shifts),
  });
});

/** Two sheets: the design put together, and drawn apart; both numbered, with the parts table. */
export function pictureSheets(solids: Solids, options: DrawingOptions): readonly Draft[] {
  return [
    pictureSheet(solids, options, 'picture', 'isometric view', putTogether(solids)),
    explodedSheet(solids, options),
  ];
}

/** The second of them alone. */
export const explodedSheet = (solids: Solids, options: DrawingOptions): Draft =>
  pictureSheet(solids, options, 'exploded', 'exploded view', drawnApart(solids));

function pictureSheet(
  solids: Solids,
  options: DrawingOptions,
  id: string,
  title: string,
  { view, spots }: Telling,
): Draft {
  const list = partsList(solids, options.units);
  const rows = partsTable(list);
  const box = viewBox(view);
  const best = (['landscape', 'portrait'] as const)
    .map((orientation) => {
      const page = pageOf(options.paper, orientation);
      return { page, ...roomFor(box, drawableOf(page), rows) };
    })
    .reduce((one, other) => (other.factor > one.factor ? other : one));
  const { page, area, factor, table } = best;
  const at: Vec2 = [
    (area.minX + area.maxX - factor * (box.minX + box.maxX)) / 2,
    (area.minY + area.maxY - factor * (box.minY + box.maxY)) / 2,
  ];
  const entities: SheetEntity[] = [...viewLines(view, { at, factor }), tableAt(table, rows)];
  const numbered = list.flatMap(({ number, ids }) => {
    const spot = ids.map((one) => spots.get(one)).find((one) => one !== undefined);
    return spot === undefined ? [] : [{ number, at: viewPoint({ at, factor }, spot) }];
  });
  const rings = balloons(roomOf(entities), numbered, area);
  return {
    id,
    title,
    page,
    documentType: 'picture',
    scale: undefined,
    entities: [...entities, ...rings],
    cautions: ['For reference only: sizes are on the board drawings.'],
  };
}

/** Where an exploded picture may be seen from: the first one that shows every part of the list, or the most of them. */
const DIRECTIONS: readonly Frame[] = [
  VIEW_FRAMES.isometric,
  lookingFrom([-1, -1, 1]),
  lookingFrom([1, -1.6, 0.7]),
  lookingFrom([1, -1, -0.8]),
];

/** A picture, and where each part of it can be seen. */
interface Telling {
  readonly view: View;
  readonly spots: ReadonlyMap<string, Vec2>;
}

const putTogether = onceForEach((solids: Solids): Telling => {
  const view = isometricView(solids);
  return { view, spots: visibleSpots(seenParts(solids), VIEW_FRAMES.isometric, view) };
});

const drawnApart = onceForEach((solids: Solids): Telling => {
  const shifts = exploded(solids.design);
  const parts = seenParts(solids, shifts);
  const wires = tenonAxes(solids, shifts);
  // which parts are listed does not depend on the units of their sizes
  const list = partsList(solids, 'mm');
  let best: Telling | undefined;
  let most = -1;
  for (const frame of DIRECTIONS) {
    const view =
      frame === VIEW_FRAMES.isometric ? explodedView(solids) : viewOf(parts, frame, { hidden: false, wires });
    const spots = visibleSpots(parts, frame, view);
    const shown = list.filter(({ ids }) => ids.some((id) => spots.has(id))).length;
    if (shown > most) [best, most] = [{ view, spots }, shown];
    if (shown === list.length) break;
  }
  return best!;
});

/** Air round a picture for its numbers, mm. */
const AROUND = 12;

/** The area beside or above the table that shows a picture largest. */
function roomFor(
  box: Box,
  area: Box,
  rows: readonly (readonly string[])[],
): { readonly area: Box; readonly factor: number; readonly table: Vec2 } {
  const width = columnWidths(rows).reduce((sum, one) => sum + one, 0);
  const height = rows.length * ROW_HEIGHT;
  const above: Box = { ...area, minY: area.minY + height + 2 };
  const beside: Box = { ...area, maxX: area.maxX - width - 2 };
  const fits = width <= area.maxX - area.minX && height <= area.maxY - area.minY;
  const factorIn = (room: Box) =>
    Math.min(
      fits ? Number.POSITIVE_INFINITY : 0,
      (room.maxX - room.minX - 2 * AROUND) / (box.maxX - box.minX),
      (room.maxY - room.minY - 2 * AROUND) / (box.maxY - box.minY),
    );
  return factorIn(above) >= factorIn(beside)
    ? { area: above, factor: factorIn(above), table: [area.maxX - width, area.minY + height] }
    : { area: beside, factor: factorIn(beside), table: [area.maxX - width, area.minY + height] };
}

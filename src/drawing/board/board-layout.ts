import type { Board } from '../../board/index.js';
import { dot, type Vec2 } from '../../frame/index.js';
import { bounds, boundsOf } from '../../profile/index.js';
import { SAME_STOP } from '../../tolerances.js';
import { type DimensionRow, rowBeside, runningRow, type Side } from '../dimension/index.js';
import {
  type Box,
  bestPlace,
  boxInside,
  clearOfLines,
  type DrawingUnits,
  entitiesBox,
  letters,
  path,
  type Room,
  roomOf,
  type SheetEntity,
  type Stop,
  textBox,
} from '../sheet/index.js';
import { onSheet, type View, type ViewPlace, viewLines } from '../view/index.js';
import { type BoardStop, bevelStops, faceStops, heightStops } from './board-stops.js';
import { type BoardView, FACING } from './board-views.js';
import { bevelAngles, centreLines, featureLabels, radiusDimensions, slantAngles } from './feature-marks.js';
import { referenceLabels } from './reference-labels.js';
import type { Layout } from './scaled-figure.js';

/** A view of a board with its lines. */
export interface DrawnView {
  readonly view: BoardView;
  readonly lines: View;
}

/** Between a view with its rows and the next view, mm. */
const GAP = 7;

/** How far labels may stand outside everything else, and what room they are given round a small board, mm. */
const LABEL_BORDER = 5;
const LABEL_ROOM = { width: 80, height: 46 };

/**
 * The views of a board with all their dimensions, at a scale.
 *
 * @param at where the board's origin comes to lie in the main view, mm on the sheet
 */
export function boardLayout(
  board: Board,
  drawn: readonly DrawnView[],
  factor: number,
  at: Vec2,
  units: DrawingUnits,
): Layout {
  const main = drawn[0]!;
  const mainPlace: ViewPlace = { frame: main.view.frame, at, factor };
  const mainBox = blankBox(board, mainPlace);
  const rows = faceRows(board, mainPlace, mainBox, units);
  const depth = (side: Side) =>
    Math.max(0, ...rows.filter((row) => row.side === side).map((row) => row.depth));
  const entities: SheetEntity[] = rows.flatMap((row) => row.dimensions);
  const placed = [{ view: main.view, place: mainPlace }];
  const sides = drawn.slice(1).map(({ view }) => view);
  const thick = sides.find(({ role }) => role === 'end') ?? sides[0];
  for (const view of sides) {
    const rowsAt = (place: ViewPlace) => sideRows(board, view, place, view === thick, units);
    const place = besides(board, view, mainPlace, mainBox, depth, rowsAt);
    placed.push({ view, place });
    entities.push(...rowsAt(place));
  }
  for (const [i, { place }] of placed.entries()) entities.push(...viewLines(drawn[i]!.lines, place));
  if (!fillsBlank(board)) {
    entities.push(
      path(
        'neighbour',
        [
          [mainBox.minX, mainBox.minY],
          [mainBox.maxX, mainBox.minY],
          [mainBox.maxX, mainBox.maxY],
          [mainBox.minX, mainBox.maxY],
        ],
        true,
      ),
    );
  }
  for (const { view, place } of placed) entities.push(...centreLines(board, view, place));
  const least = entitiesBox(entities);
  return {
    least,
    whole: () => {
      const within = labelRoom(least);
      const room = roomOf(entities);
      // labels take time to place
      return [
        ...entities,
        // a view's name stands nearest to it
        ...captions(board, placed, room, within),
        ...bevelAngles(board, placed, room, within),
        ...slantAngles(board, mainPlace, room, within),
        ...radiusDimensions(board, mainPlace, room, within, units),
        ...referenceLabels(board, mainPlace, room, within),
        ...featureLabels(board, placed, room, within),
      ];
    },
  };
}

interface SidedRow extends DimensionRow {
  readonly side: Side;
}

/** Every place of the face from the reference end and the reference edge, the board's own size last: one way for each size. */
function faceRows(board: Board, place: ViewPlace, box: Box, units: DrawingUnits): readonly SidedRow[] {
  const { length, width } = board.blank;
  const whole: readonly BoardStop[] = [
    { axis: 0, value: length, what: 'opposite end', point: [length, 0, 0] },
    { axis: 1, value: width, what: 'opposite edge', point: [0, width, 0] },
  ];
  const stops = [...faceStops(board), ...whole].map((stop) => ({
    ...stop,
    point: onSheet(place, stop.point),
  }));
  const origin = onSheet(place, [0, 0, 0]);
  return ([0, 1] as const).map((axis): SidedRow => {
    const along = stops.filter((stop) => stop.axis === axis);
    const side = axis === 0 ? 'below' : 'left';
    const reference = axis === 0 ? 'the reference end' : 'the reference edge';
    return { ...runningRow(rowBeside(box, side), origin, along, reference, units), side };
  });
}

/**
 * Rows of an edge or end view: heights over the reference face, long and short points of its bevels; what the main view tells
 * is not told again, and the thickness is told by one of them.
 */
function sideRows(
  board: Board,
  view: BoardView,
  place: ViewPlace,
  thick: boolean,
  units: DrawingUnits,
): readonly SheetEntity[] {
  const box = blankBox(board, place);
  const along = view.role === 'edge' ? 0 : 1;
  const [flat, upright]: readonly [Side, Side] = view.role === 'edge' ? ['below', 'left'] : ['left', 'below'];
  const on = (stop: BoardStop): Stop => ({ ...stop, point: onSheet(place, stop.point) });
  const origin = onSheet(place, [0, 0, 0]);
  const { length, width, thickness } = board.blank;
  const told = [
    ...faceStops(board)
      .filter(({ axis }) => axis === along)
      .map(({ value }) => value),
    along === 0 ? length : width,
  ];
  const bevels = bevelStops(board).filter(
    ({ axis, value }) => axis === along && !told.some((one) => Math.abs(one - value) <= SAME_STOP),
  );
  const reference = along === 0 ? 'the reference end' : 'the reference edge';
  const heights = [
    ...heightStops(board).filter((stop) => dot(stop.facing ?? [0, 0, 0], view.frame.z) > FACING),
    ...(thick
      ? [{ axis: 2, value: thickness, what: 'opposite face', point: [0, 0, thickness] } as const]
      : []),
  ];
  return [
    ...runningRow(rowBeside(box, flat), origin, bevels.map(on), reference, units).dimensions,
    ...runningRow(rowBeside(box, upright), origin, heights.map(on), 'the reference face', units).dimensions,
  ];
}

/** Where a view beside the main one lies: in line with it, beyond its rows and with room for its own. */
function besides(
  board: Board,
  view: BoardView,
  main: ViewPlace,
  mainBox: Box,
  depth: (side: Side) => number,
  rowsAt: (place: ViewPlace) => readonly SheetEntity[],
): ViewPlace {
  const loose: ViewPlace = { frame: view.frame, at: main.at, factor: main.factor };
  // its rows tell how much room it needs; in line with the main view it lies already
  const own = entitiesBox([...rowsAt(loose), path('visible', boxCorners(blankBox(board, loose)))]);
  const out = depth(view.side!) + GAP;
  const [x, y] = main.at;
  switch (view.side!) {
    case 'below':
      return { ...loose, at: [x, y + mainBox.minY - out - own.maxY] };
    case 'above':
      return { ...loose, at: [x, y + mainBox.maxY + out - own.minY] };
    case 'right':
      return { ...loose, at: [x + mainBox.maxX + out - own.minX, y] };
    case 'left':
      return { ...loose, at: [x + mainBox.minX - out - own.maxX, y] };
  }
}

function captions(
  board: Board,
  placed: readonly { readonly view: BoardView; readonly place: ViewPlace }[],
  room: Room,
  within: Box,
): readonly SheetEntity[] {
  return placed.flatMap(({ view, place }) => {
    const box = blankBox(board, place);
    const middle = (box.minX + box.maxX) / 2;
    const places = [1.5, 3, 5, 8, 12].flatMap((out) =>
      [
        [middle, box.maxY + out] as const,
        [middle, box.minY - out - 2.5] as const,
        [box.minX + 15, box.maxY + out] as const,
        [box.maxX - 15, box.maxY + out] as const,
      ].map((at) => letters(at, view.name, { anchor: 'middle', bold: true })),
    );
    const best = bestPlace(
      room,
      places.filter((one) => boxInside(textBox(one), within)),
      textBox,
    );
    if (!best) return [];
    const words = clearOfLines(room, best);
    room.claim(textBox(best));
    return words;
  });
}

/** The blank's box in a view, on the sheet. */
function blankBox(board: Board, place: ViewPlace): Box {
  const { length, width, thickness } = board.blank;
  return boundsOf([onSheet(place, [0, 0, 0]), onSheet(place, [length, width, thickness])]);
}

const boxCorners = ({ minX, minY, maxX, maxY }: Box): readonly Vec2[] => [
  [minX, minY],
  [maxX, maxY],
];

function labelRoom({ minX, minY, maxX, maxY }: Box): Box {
  const across = Math.max(LABEL_BORDER, (LABEL_ROOM.width - (maxX - minX)) / 2);
  const up = Math.max(LABEL_BORDER, (LABEL_ROOM.height - (maxY - minY)) / 2);
  return { minX: minX - across, minY: minY - up, maxX: maxX + across, maxY: maxY + up };
}

/** Whether a board's outline is its whole blank. */
function fillsBlank({ outline, blank }: Board): boolean {
  const box = bounds(outline);
  return (
    outline.length === 4 &&
    outline.every(
      ({ bulge, x, y }) =>
        bulge === 0 && (x === box.minX || x === box.maxX) && (y === box.minY || y === box.maxY),
    ) &&
    box.maxX - box.minX === blank.length &&
    box.maxY - box.minY === blank.width
  );
}

import type { Board } from '../../board/index.js';
import type { Vec2, Vec3 } from '../../frame/index.js';
import { bounds, boundsOf } from '../../profile/index.js';
import { chainRow, type DimensionRow, rowBeside, runningRow, type Side } from '../dimension/index.js';
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

/** How far labels may stand outside everything else, mm. */
const LABEL_BORDER = 5;

/** First line of a chain, and air to the row beyond it, mm out of the view's border. */
const CHAIN_OUT = 5;
const ROW_AIR = 2.5;

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
  for (const { view } of drawn.slice(1)) {
    const place = besides(board, view, mainPlace, mainBox, depth, units);
    placed.push({ view, place });
    entities.push(...sideRows(board, view, place, units));
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
      const within = grown(least, LABEL_BORDER);
      const room = roomOf(entities);
      // labels take time to place
      return [
        ...entities,
        ...bevelAngles(board, placed, room, within),
        ...slantAngles(board, mainPlace, room, within),
        ...radiusDimensions(board, mainPlace, room, within, units),
        ...referenceLabels(board, mainPlace, room, within),
        ...featureLabels(board, placed, room, within),
        ...captions(board, placed, room, within),
      ];
    },
  };
}

interface SidedRow extends DimensionRow {
  readonly side: Side;
}

function faceRows(board: Board, place: ViewPlace, box: Box, units: DrawingUnits): readonly SidedRow[] {
  const { length, width } = board.blank;
  const stops = faceStops(board).map((stop) => ({ ...stop, point: onSheet(place, stop.point) }));
  const origin = onSheet(place, [0, 0, 0]);
  return ([0, 1] as const).flatMap((axis): SidedRow[] => {
    const along = stops.filter((stop) => stop.axis === axis);
    const [near, far]: readonly [Side, Side] = axis === 0 ? ['below', 'above'] : ['left', 'right'];
    const reference = axis === 0 ? 'the reference end' : 'the reference edge';
    const running = runningRow(rowBeside(box, near), origin, along, reference, units);
    const beside = rowBeside(box, far);
    const size = axis === 0 ? length : width;
    const border = (value: number, what: string): Stop => {
      const p: Vec3 = axis === 0 ? [value, 0, 0] : [0, value, 0];
      return { value, what, point: beside.at(beside.alongOf(onSheet(place, p)), 0) };
    };
    const whole = [
      border(0, reference.slice(4)),
      border(size, axis === 0 ? 'opposite end' : 'opposite edge'),
    ];
    const links = along.filter((stop) => stop.link);
    const chain =
      links.length === 0
        ? { dimensions: [], depth: 0 }
        : chainRow(beside, CHAIN_OUT, [...whole, ...links], units);
    const overall = chainRow(beside, Math.max(CHAIN_OUT, chain.depth + ROW_AIR), whole, units);
    return [
      { ...running, side: near },
      { ...chain, side: far },
      { ...overall, side: far },
    ];
  });
}

/** Rows of an edge or end view: thickness, heights over the reference face, long and short points of its bevels. */
function sideRows(
  board: Board,
  view: BoardView,
  place: ViewPlace,
  units: DrawingUnits,
): readonly SheetEntity[] {
  const box = blankBox(board, place);
  const along = view.role === 'edge' ? 0 : 1;
  const [flat, upright]: readonly [Side, Side] = view.role === 'edge' ? ['below', 'left'] : ['left', 'below'];
  const out: Side = view.role === 'edge' ? 'right' : 'above';
  const on = (stop: BoardStop): Stop => ({ ...stop, point: onSheet(place, stop.point) });
  const origin = onSheet(place, [0, 0, 0]);
  const bevels = bevelStops(board).filter((stop) => stop.axis === along);
  const reference = along === 0 ? 'the reference end' : 'the reference edge';
  const entered = view.role === 'edge' ? 1 : 0;
  const heights = heightStops(board).filter((stop) => Math.abs(stop.facing?.[entered] ?? 0) > FACING);
  const beside = rowBeside(box, out);
  const border = (value: number, what: string): Stop => ({
    value,
    what,
    point: beside.at(beside.alongOf(onSheet(place, [0, 0, value])), 0),
  });
  const thickness = chainRow(
    beside,
    CHAIN_OUT,
    [border(0, 'reference face'), border(board.blank.thickness, 'opposite face')],
    units,
  );
  return [
    ...runningRow(rowBeside(box, flat), origin, bevels.map(on), reference, units).dimensions,
    ...runningRow(rowBeside(box, upright), origin, heights.map(on), 'the reference face', units).dimensions,
    ...thickness.dimensions,
  ];
}

/** Where a view beside the main one lies: in line with it, beyond its rows and with room for its own. */
function besides(
  board: Board,
  view: BoardView,
  main: ViewPlace,
  mainBox: Box,
  depth: (side: Side) => number,
  units: DrawingUnits,
): ViewPlace {
  const loose: ViewPlace = { frame: view.frame, at: main.at, factor: main.factor };
  // its rows tell how much room it needs; in line with the main view it lies already
  const own = entitiesBox([
    ...sideRows(board, view, loose, units),
    path('visible', boxCorners(blankBox(board, loose))),
  ]);
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
    const places = [2, 5, 8, 12, 16, 20, 25, 30, 36].flatMap((out) =>
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

const grown = ({ minX, minY, maxX, maxY }: Box, by: number): Box => ({
  minX: minX - by,
  minY: minY - by,
  maxX: maxX + by,
  maxY: maxY + by,
});

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

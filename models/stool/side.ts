import { mirrored, type PlacedBoard, trimmed } from '../../src/assembly/index.js';
import { type Bevel, makeBoard } from '../../src/board/index.js';
import { cross, directionIn, type Frame, frame, levelAt, scale } from '../../src/frame/index.js';
import { type Profile, polygon } from '../../src/profile/index.js';
import type { Layout, Step } from './layout.js';

/**
 * The boards of both sides: raked outwards, tapered, with a foot arch. A stepped side is two boards with a seam at the riser, glued after
 * their mortises are cut, for no router stands on the lower seat beside a riser; or it is sawn from one board.
 *
 * Board frame: reference face = outer face, reference end = foot, measured up the grain from the foot's long point. The right ones are
 * measured from their front edges; the left ones are their mirror images.
 */
export interface Sides {
  readonly left: PlacedBoard;
  readonly right: PlacedBoard;
  /** The front boards of stepped sides built of two. */
  readonly steps: readonly PlacedBoard[];
}

export function sides(l: Layout): Sides {
  const built = l.step && !l.step.sawn;
  const right = built ? sideBoard(l, 'right-side', rear(l, l.step), l.under) : wholeSide(l);
  const step = built ? [sideBoard(l, 'right-step', front(l, l.step), l.step.under)] : [];
  const leftOf = (board: PlacedBoard, id: string) =>
    mirrored(board, { point: [0, 0, 0], normal: [1, 0, 0] }, id);
  return {
    left: leftOf(right, 'left-side'),
    right,
    steps: step.flatMap((board) => [leftOf(board, 'left-step'), board]),
  };
}

type Corner = { x: number; y: number; radius?: number };

/** A board of the right side, its foot on the floor and its top level at a height. */
function sideBoard(l: Layout, id: string, corners: readonly Corner[], top: number): PlacedBoard {
  const reach = (of: readonly number[]) => Math.max(...of) - Math.min(...of);
  const start = Math.min(...corners.map(({ y }) => y));
  const { up } = l.lean;
  const placed = {
    board: makeBoard({
      id,
      material: l.material,
      blank: {
        length: reach(corners.map(({ x }) => x)),
        width: reach(corners.map(({ y }) => y)),
        thickness: l.side.thickness,
      },
      outline: measuredFrom(start, corners),
    }),
    place: frame([l.outerAt(0), start, 0], cross(up, [0, 1, 0]), up),
  };
  const floor = levelAt(0);
  return trimmed(trimmed(placed, { ...floor, normal: scale(floor.normal, -1) }, 'foot'), levelAt(top), 'top');
}

/** A side of one board; when it is stepped, the seat is cut after the outline. */
function wholeSide(l: Layout): PlacedBoard {
  const { length } = l.side;
  const standing: Corner[] = l.step
    ? [
        { x: 0, y: l.footFront },
        { x: l.step.seat, y: l.step.front },
        { x: l.step.seat, y: l.step.riser, radius: l.step.radius },
        { x: length, y: l.step.riser },
      ]
    : [
        { x: 0, y: l.footFront },
        { x: length, y: l.topFront },
      ];
  const corners = [...standing, ...back(l), ...archBack(l), ...archFront(l)];
  const side = sideBoard(l, 'right-side', corners, l.under);
  const seats = l.step ? seat(l, l.step, side.place) : [];
  return { ...side, board: { ...side.board, bevels: [...side.board.bevels, ...seats] } };
}

/** The tall board of a stepped side, from the riser back; x up the grain, y as in the assembly. */
const rear = (l: Layout, { riser }: Step): readonly Corner[] => [
  { x: l.arch?.height ?? 0, y: riser },
  { x: l.side.length, y: riser },
  ...back(l),
  ...archBack(l),
];

/** The low board in front of it. */
const front = (l: Layout, { riser, seat, front }: Step): readonly Corner[] => [
  { x: 0, y: l.footFront },
  { x: seat, y: front },
  { x: seat, y: riser },
  { x: l.arch?.height ?? 0, y: riser },
  ...archFront(l),
];

const back = (l: Layout): readonly Corner[] => [
  { x: l.side.length, y: l.topBack },
  { x: 0, y: l.footBack },
];

const archBack = ({ arch }: Layout): readonly Corner[] =>
  arch
    ? [
        { x: 0, y: arch.to },
        { x: arch.height, y: arch.to, radius: arch.radius },
      ]
    : [];

const archFront = ({ arch }: Layout): readonly Corner[] =>
  arch
    ? [
        { x: arch.height, y: arch.from, radius: arch.radius },
        { x: 0, y: arch.from },
      ]
    : [];

/** The seat of the step, level like the top; the corner behind it keeps its round. */
function seat(l: Layout, { seat, front, riser, radius }: Step, place: Frame): readonly Bevel[] {
  const run = l.side.bevelRun;
  if (run === 0) return [];
  const strip: readonly Corner[] = [
    { x: seat - run - 1, y: front - run - 1 },
    { x: seat + 1, y: front - run - 1 },
    { x: seat + 1, y: riser - radius },
    { x: seat - run - 1, y: riser - radius },
  ];
  return [
    {
      id: 'step',
      point: [seat, 0, l.side.thickness],
      normal: directionIn(place, [0, 0, 1]),
      within: measuredFrom(l.footFront, strip),
    },
  ];
}

/** Corners in assembly y become a profile measured from a board's front edge. */
const measuredFrom = (start: number, corners: readonly Corner[]): Profile =>
  polygon(corners.map((corner) => ({ ...corner, y: corner.y - start })));

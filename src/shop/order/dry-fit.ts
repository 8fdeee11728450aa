import type { Design, PlacedBoard } from '../../assembly/index.js';
import { type Board, type Face, faces } from '../../board/index.js';
import { pointOut, type Vec3 } from '../../frame/index.js';
import { SAME_POINT } from '../../tolerances.js';
import { boardEnds, sideOfBlank } from '../boards/index.js';
import { faceWords, inARow } from '../words/index.js';
import type { StepDraft } from './work-step.js';

type Figure = StepDraft['figures'][number];

/** Heights that differ by less are one height to a rule, mm. */
const ONE_HEIGHT = 0.1;

/**
 * Boards put together dry so that those which close a gap are cut to what is there: what is clamped to what, between which
 * faces the gap is measured, along which side of the board that will fill it, and how high above the bench.
 */
export function dryFit(
  design: Design,
  others: readonly PlacedBoard[],
  fitted: readonly PlacedBoard[],
): StepDraft {
  const bench = lowest(others);
  const gaps = fitted.map((placed) => gapFor(placed, design, bench));
  const sides = others.filter(({ board }) => gaps.some(({ between }) => between.includes(board.id)));
  const holders = others.filter(
    ({ board }) =>
      !sides.some((side) => side.board.id === board.id) &&
      design.joints.some(({ a, b }) =>
        sides.some((side) => [a, b].includes(side.board.id) && [a, b].includes(board.id)),
      ),
  );
  const clamped =
    holders.length > 0
      ? `, and clamp the ${names(sides)} to the ${names(holders)} until the shoulders are closed`
      : '';
  return {
    board: undefined,
    kind: 'dry fit',
    what: `put the ${names(others)} together with their tenons, without glue, on a flat bench${clamped}; ${gaps.map(({ what }) => what).join('; ')}; where what you measure differs from the list, cut to what you measure`,
    uses: [],
    makes: [],
    cuts: [],
    figures: gaps.flatMap(({ figures }) => figures),
    setup: undefined,
  };
}

const names = (boards: readonly PlacedBoard[]): string => inARow(boards.map(({ board }) => board.name));

interface Gap {
  readonly between: readonly string[];
  readonly what: string;
  readonly figures: readonly Figure[];
}

function gapFor({ board, place }: PlacedBoard, { joints, boards }: Design, bench: number): Gap {
  const ends = ([-1, 1] as const).flatMap((towards) => {
    const face = faces(board).find(
      ({ id, grain, frame }) =>
        grain === 'end' && frame.z[0] * towards > 0 && board.mortises.some((mortise) => mortise.face === id),
    );
    const joint = joints.find(({ id }) =>
      board.mortises.some((one) => one.face === face?.id && one.joint === id),
    );
    const other = boards.find((one) => one.board.id === (joint?.a === board.id ? joint?.b : joint?.a))?.board;
    return face && joint && other ? [{ other, joint, corners: longCorners(face, towards) }] : [];
  });
  const heights = ends.map(({ corners }) => {
    const all = corners.map((corner) => pointOut(place, corner)[2] - bench);
    return all.reduce((sum, one) => sum + one, 0) / all.length;
  });
  const side = sideOfBlank(
    board,
    ends.flatMap(({ corners }) => corners),
  );
  const from = ends.map(({ other, joint }) => `the ${seatFace(other, joint.id)} of the ${other.name}`);
  return {
    between: ends.map(({ other }) => other.id),
    what: `measure the gap for the ${board.name} from ${from.join(' to ')}, along the line where its ${side ?? 'middle'} will lie`,
    figures: [
      {
        name: `length of ${board.name} by the list, long point to long point`,
        value: boardEnds(board).longPoint,
        unit: 'mm',
      },
      ...heightFigures(board, ends, heights),
    ],
  };
}

function heightFigures(
  board: Board,
  ends: readonly { readonly other: Board }[],
  heights: readonly number[],
): readonly Figure[] {
  const [first, last] = [heights[0], heights.at(-1)];
  if (first === undefined || last === undefined) return [];
  const name = `height of that line above the bench for the ${board.name}`;
  return Math.abs(first - last) < ONE_HEIGHT
    ? [{ name, value: first, unit: 'mm' }]
    : heights.map((value, i) => ({ name: `${name}, at the ${ends[i]!.other.name}`, value, unit: 'mm' }));
}

/** Corners of an end that reach farthest along the grain. */
function longCorners({ frame, region }: Face, towards: 1 | -1): readonly Vec3[] {
  const corners = region.flatMap((loop) => loop.map(([x, y]) => pointOut(frame, [x, y, 0])));
  const most = Math.max(...corners.map(([x]) => towards * x));
  return corners.filter(([x]) => towards * x > most - SAME_POINT);
}

const seatFace = (board: Board, joint: string): string => {
  const mortise = board.mortises.find((one) => one.joint === joint);
  return mortise ? faceWords(board, mortise.face) : 'face';
};

/** What the boards stand on when they are put together, mm. */
const lowest = (boards: readonly PlacedBoard[]): number =>
  Math.min(
    ...boards.flatMap(({ board, place }) =>
      faces(board).flatMap(({ frame, region }) =>
        region.flatMap((loop) => loop.map(([x, y]) => pointOut(place, pointOut(frame, [x, y, 0]))[2])),
      ),
    ),
  );

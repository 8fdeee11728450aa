import { BoardError, type ErrorText } from '../errors.js';
import { pointOut, scale, type Vec3 } from '../frame/index.js';
import { intersectRegion, rectangle, regionArea, regionBounds, regionOf } from '../profile/index.js';
import { SAME_POINT } from '../tolerances.js';
import type { Board, FaceId, Groove } from './board.js';
import { faces } from './faces.js';
import { meetingLine, seenIn } from './groove.js';

/** A groove as a maker asks for it; lengths mm. */
export interface GrooveSpec {
  /** `groove` when left out; a second groove of a board needs its own. */
  readonly id?: string;
  /** The face it is cut into. */
  readonly face: FaceId;
  /** The face its fence follows, at an angle to that. */
  readonly from: FaceId;
  /** From that face to the near wall; 0 for a rebate. */
  readonly distance: number;
  readonly width: number;
  readonly depth: number;
  /**
   * How far before the end of the face it stops, over its round end; through when left out. The start is the end nearer the
   * reference end, of a groove across the grain the one nearer the reference edge, of one through the thickness the reference face.
   */
  readonly stop?: { readonly start?: number; readonly end?: number };
}

/**
 * A board with a groove along one of its faces, through or stopped at either end.
 *
 * @throws BoardError `groove` when the faces do not meet, or the groove leaves the board
 * @example withGroove(stile, { face: 'reference-edge', from: 'reference-face', distance: 7, width: 6, depth: 10 })
 */
export function withGroove(board: Board, spec: GrooveSpec): Board {
  const { id = 'groove', face, from, distance, width, depth, stop = {} } = spec;
  const refuse = (text: ErrorText): never => {
    throw new BoardError('groove', (say) => {
      const told = typeof text === 'string' ? text : text(say);
      return `board ${board.id}, groove ${id}: ${told}`;
    });
  };
  if (board.grooves.some((groove) => groove.id === id))
    refuse('another groove of this board has that name: give it an id of its own');
  for (const [name, size, least] of [
    ['width', width, SAME_POINT],
    ['depth', depth, SAME_POINT],
    ['distance', distance, 0],
    ['stop.start', stop.start ?? 1, SAME_POINT],
    ['stop.end', stop.end ?? 1, SAME_POINT],
  ] as const) {
    if (!(Number.isFinite(size) && size >= least))
      refuse(
        (say) =>
          `its ${name} is ${Number.isFinite(size) ? say.fine(size) : size}; it must be ${least === 0 ? '0 or more' : 'more than 0'}: give a length`,
      );
  }
  const known = faces(board);
  const on = known.find((one) => one.id === face);
  const missing = [face, from].find((name) => !known.some((one) => one.id === name));
  if (missing || !on)
    return refuse(`there is no ${missing}: name one of ${known.map((one) => one.id).join(', ')}`);
  const line = meetingLine(board, face, from);
  if (!line)
    return refuse(
      `no fence on the ${from} guides a cutter in the ${face}: name a face that meets it at an edge`,
    );
  // seen along the fence: x the way the groove runs, y off the fence
  const wood = seenIn(on.frame, line, on.region);
  const far = distance + width;
  const strip = rectangle({
    x: -FAR,
    y: distance,
    length: 2 * FAR,
    width,
  });
  const mouth = intersectRegion(wood, regionOf(strip));
  const room = regionBounds(wood);
  if (regionArea(mouth) === 0 || far > room.maxY - SAME_POINT)
    refuse(
      (say) =>
        `it reaches from ${say.fine(distance)} to ${say.fine(far)} off the ${from}, and the ${face} ends at ${say.fine(room.maxY)}: make it narrower, or measure it from another face`,
    );
  const whole = wholeDepth(board, on.frame.z);
  if (depth >= whole - SAME_POINT)
    refuse(
      (say) =>
        `it is ${say.fines(depth, whole)[0]} deep, and the wood is only ${say.fines(depth, whole)[1]}: make it shallower`,
    );
  const found = regionBounds(mouth);
  // the start is at the board's reference end, edge or face
  const forward =
    line.x.reduce((most, part) => (Math.abs(part) > Math.abs(most) + 1e-9 ? part : most), 0) > 0;
  const [low, high] = forward ? [stop.start, stop.end] : [stop.end, stop.start];
  const [first, last] = [found.minX + (low ?? 0), found.maxX - (high ?? 0)];
  if (last - first < 2 * width)
    refuse(
      (say) =>
        `its stops leave ${say.fines(Math.max(last - first, 0), 2 * width)[0]} of it; they must leave at least ${say.fines(Math.max(last - first, 0), 2 * width)[1]}: stop it later`,
    );
  const stopped = (['start', 'end'] as const).filter((end) => stop[end] !== undefined);
  const rebate = distance === 0;
  if (rebate && stopped.length > 0)
    refuse('a rebate runs out at both ends: leave stop out, or give the groove a second wall');
  const turn = (v: Vec3): Vec3 => (forward ? v : scale(v, -1));
  const groove: Groove = {
    id,
    face,
    from,
    at: {
      origin: pointOut(line, [(first + last) / 2, distance + width / 2, 0]),
      x: turn(line.x),
      y: turn(line.y),
      z: line.z,
    },
    width,
    length: last - first,
    depth,
    stopped,
    ...(rebate ? { rebate: forward ? (-1 as const) : (1 as const) } : {}),
  };
  return { ...board, grooves: [...board.grooves, groove] };
}

/** Longer than any board, mm. */
const FAR = 1e5;

/** How far the blank goes square to a face. */
const wholeDepth = ({ blank }: Board, [x, y, z]: Vec3): number =>
  Math.abs(x) > Math.SQRT1_2
    ? blank.length
    : Math.abs(y) > Math.SQRT1_2
      ? blank.width
      : Math.abs(z) > 0
        ? blank.thickness
        : 0;

import type { Board } from '../../board/index.js';
import type { Vec2 } from '../../frame/index.js';
import {
  clockwise,
  counterClockwise,
  directionAt,
  pointAlong,
  type Segment,
  segments,
  sweep,
} from '../../profile/index.js';

/** A stretch of an edge that runs across the grain one way. Board XY, mm. */
export interface Downhill {
  readonly at: Vec2;
  /** Unit: the way a cutter goes so that it lays the fibres down. */
  readonly direction: Vec2;
  /** Unit, out of the wood. */
  readonly out: Vec2;
  /**
   * Whether a router held on the template, fed against its cutter's turn (counter-clockwise round the board, clockwise round
   * an opening, seen from above), goes that way too; if not, board and template are turned over for this stretch.
   */
  readonly withFeed: boolean;
}

/** Edges steeper across the grain than this are end grain, flatter ones run along it, degrees. */
const AT_LEAST_DEG = 4;
const AT_MOST_DEG = 86;

/** One arrow for each of these, mm along the edge. */
const EVERY = 120;

/** A stretch shorter than this gets no arrow of its own, mm. */
const SHORTEST = 8;

/**
 * Which way each edge that runs across the grain is routed downhill: the outward normal then has a part along the way of
 * travel seen along the grain, so that the fibres run out of the wood behind the cutter and not ahead of it.
 */
export function downhillOf(board: Board): readonly Downhill[] {
  const loops = [counterClockwise(board.outline), ...board.openings.map(({ outline }) => clockwise(outline))];
  return loops.flatMap((loop) =>
    segments(loop).flatMap((piece) => stretches(piece).flatMap((part) => arrows(piece, part))),
  );
}

type Part = readonly [from: number, to: number];

/** A segment parted where its direction is along or square to the grain: an arc may turn from uphill to downhill there. */
function stretches(piece: Segment): readonly Part[] {
  if (piece.kind === 'line') return [[0, 1]];
  const turn = sweep(piece);
  const start = Math.atan2(piece.from[1] - piece.centre[1], piece.from[0] - piece.centre[0]);
  const quarter = Math.PI / 2;
  const [low, high] = [Math.min(start, start + turn), Math.max(start, start + turn)];
  const splits: number[] = [];
  for (let k = Math.ceil(low / quarter - 1e-9); k * quarter <= high + 1e-9; k += 1)
    splits.push((k * quarter - start) / turn);
  const stops = [0, ...splits.filter((t) => t > 1e-6 && t < 1 - 1e-6).sort((a, b) => a - b), 1];
  return stops.slice(1).map((end, i) => [stops[i]!, end] as const);
}

/** Loops run with the wood on their left, which is also the feed of a hand-held router. */
function arrows(piece: Segment, [from, to]: Part): readonly Downhill[] {
  const whole =
    piece.kind === 'line'
      ? Math.hypot(piece.to[0] - piece.from[0], piece.to[1] - piece.from[1])
      : piece.radius * Math.abs(sweep(piece));
  const run = whole * (to - from);
  if (run < SHORTEST) return [];
  const count = Math.max(1, Math.round(run / EVERY));
  return Array.from({ length: count }, (_, i) => from + ((i + 0.5) / count) * (to - from)).flatMap((t) => {
    const way = wayAt(piece, t);
    const out: Vec2 = [way[1], -way[0]];
    const acrossDeg = (Math.asin(Math.min(1, Math.abs(way[1]))) * 180) / Math.PI;
    if (acrossDeg < AT_LEAST_DEG || acrossDeg > AT_MOST_DEG) return [];
    const withFeed = way[0] * out[0] > 0;
    return [
      { at: pointAlong(piece, t), direction: withFeed ? way : ([-way[0], -way[1]] as const), out, withFeed },
    ];
  });
}

/** Direction of travel at a fraction of a segment. */
function wayAt(piece: Segment, t: number): Vec2 {
  if (piece.kind === 'line') return directionAt(piece, 0);
  const [x, y] = directionAt(piece, 0);
  const [c, s] = [Math.cos(sweep(piece) * t), Math.sin(sweep(piece) * t)];
  return [x * c - y * s, x * s + y * c];
}

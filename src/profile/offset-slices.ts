import type { Vec2 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import { boundsMeet, segmentBounds } from './bounds.js';
import { distanceToSegment } from './distance.js';
import { intersections } from './intersections.js';
import type { Piece } from './offset-pieces.js';
import { pointAlong, type Segment, sweep } from './segment.js';

/** A part of an offset piece between two points where pieces meet. */
export interface Slice {
  readonly from: Vec2;
  readonly to: Vec2;
  /** Angle it turns through, radians, 0 for a line. */
  readonly turn: number;
  readonly middle: Vec2;
  readonly segment: Segment;
  readonly source: number;
}

/** A slice whose middle is nearer to the original than the offset by more than this is behind another part of it. */
const NEARER = SAME_POINT / 100;

/** Every piece cut wherever it meets another. */
export function sliced(pieces: readonly Piece[]): readonly Slice[] {
  const boxes = pieces.map((piece) => segmentBounds(piece.segment));
  const cuts: Vec2[][] = pieces.map(() => []);
  for (let i = 0; i < pieces.length; i++)
    for (let j = i + 1; j < pieces.length; j++) {
      if (!boundsMeet(boxes[i]!, boxes[j]!, SAME_POINT)) continue;
      const met = intersections(pieces[i]!.segment, pieces[j]!.segment);
      cuts[i]!.push(...met);
      cuts[j]!.push(...met);
    }
  return pieces.flatMap((piece, i) => cutAt(piece, cuts[i]!));
}

/** The slices that keep the distance from the whole original; a slice that another one runs back over goes with it. */
export function keptSlices(
  slices: readonly Slice[],
  original: readonly Segment[],
  distance: number,
): readonly Slice[] {
  const clear = slices.filter((slice) =>
    original.every((piece) => distanceToSegment(piece, slice.middle) >= distance - NEARER),
  );
  return clear.filter(
    (slice, i) =>
      !clear.some(
        (other, j) =>
          near(slice.middle, other.middle) &&
          ((near(slice.from, other.to) && near(slice.to, other.from)) ||
            (j < i && near(slice.from, other.from) && near(slice.to, other.to))),
      ),
  );
}

function cutAt({ segment, source }: Piece, points: readonly Vec2[]): readonly Slice[] {
  const inner = points
    .filter((point) => !near(point, segment.from) && !near(point, segment.to))
    .map((point) => ({ point, at: fractionOf(segment, point) }))
    .toSorted((a, b) => a.at - b.at);
  const stops = [{ point: segment.from, at: 0 }];
  for (const stop of [...inner, { point: segment.to, at: 1 }])
    if (!near(stop.point, stops.at(-1)!.point) || stop.at === 1) stops.push(stop);
  const whole = segment.kind === 'line' ? 0 : sweep(segment);
  return stops.slice(1).map((stop, i) => {
    const start = stops[i]!;
    return {
      from: start.point,
      to: stop.point,
      turn: whole * (stop.at - start.at),
      middle: pointAlong(segment, (start.at + stop.at) / 2),
      segment,
      source,
    };
  });
}

/** How far along a segment one of its points lies, 0..1. */
function fractionOf(segment: Segment, [x, y]: Vec2): number {
  if (segment.kind === 'line') {
    const [dx, dy] = [segment.to[0] - segment.from[0], segment.to[1] - segment.from[1]];
    return ((x - segment.from[0]) * dx + (y - segment.from[1]) * dy) / (dx * dx + dy * dy);
  }
  const { centre, from, bulge } = segment;
  const [ax, ay, bx, by] = [from[0] - centre[0], from[1] - centre[1], x - centre[0], y - centre[1]];
  const angle = Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * (bulge > 0 ? 1 : -1);
  return (angle < 0 ? angle + 2 * Math.PI : angle) / Math.abs(sweep(segment));
}

const near = (a: Vec2, b: Vec2): boolean =>
  Math.abs(a[0] - b[0]) <= 2 * SAME_POINT && Math.abs(a[1] - b[1]) <= 2 * SAME_POINT;

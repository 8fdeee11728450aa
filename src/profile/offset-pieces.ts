import type { Vec2 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import { directionAt, type Segment, segment } from './segment.js';

/** What an offset outline does at a corner it passes on the outer side. */
export type Corners = 'round' | 'sharp';

/** A part of a raw offset outline; pieces of one `source` continue each other on the same line or circle. */
export interface Piece {
  readonly segment: Segment;
  readonly source: number;
}

/**
 * Every segment moved to its right by a distance, with the arcs or extended lines that close the outer corners. Nothing is trimmed yet,
 * and inner corners stay open: the pieces there cross.
 */
export function offsetPieces(
  original: readonly Segment[],
  distance: number,
  corners: Corners,
): readonly Piece[] {
  return original.flatMap((segment, i) => {
    const next = (i + 1) % original.length;
    const body = movedRight(segment, distance);
    return [
      ...(body ? [{ segment: body, source: i }] : []),
      ...join(segment, original[next]!, distance, corners, [i, next, original.length + i]),
    ];
  });
}

/** The segment moved to its right; undefined for an arc whose radius is used up. */
function movedRight(piece: Segment, distance: number): Segment | undefined {
  if (piece.kind === 'line') return segment(besides(piece, 0, distance), besides(piece, 1, distance), 0);
  const radius = piece.radius + (piece.bulge > 0 ? distance : -distance);
  if (radius <= SAME_POINT) return undefined;
  return segment(besides(piece, 0, distance), besides(piece, 1, distance), piece.bulge);
}

/** The point at the distance to the right of a segment's start (0) or end (1). */
function besides(piece: Segment, end: 0 | 1, distance: number): Vec2 {
  const [ux, uy] = directionAt(piece, end);
  const [x, y] = end === 0 ? piece.from : piece.to;
  return [x + uy * distance, y - ux * distance];
}

function join(
  before: Segment,
  after: Segment,
  distance: number,
  corners: Corners,
  [first, second, own]: readonly [number, number, number],
): readonly Piece[] {
  const [from, to] = [besides(before, 1, distance), besides(after, 0, distance)];
  if (Math.hypot(to[0] - from[0], to[1] - from[1]) <= SAME_POINT) return [];
  const [inX, inY] = directionAt(before, 1);
  const [outX, outY] = directionAt(after, 0);
  const cos = inX * outX + inY * outY;
  const turn = Math.atan2(inX * outY - inY * outX, cos);
  if (turn * distance < 0) return [];
  if (corners === 'round' || before.kind === 'arc' || after.kind === 'arc')
    return [{ segment: segment(from, to, Math.tan(turn / 4)), source: own }];
  const reach = distance * Math.tan(turn / 2);
  const tip: Vec2 = [from[0] + inX * reach, from[1] + inY * reach];
  return [
    { segment: segment(from, tip, 0), source: first },
    { segment: segment(tip, to, 0), source: second },
  ];
}

import { settledFigure, type Vec2 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import type { Profile } from './profile.js';

/** A straight piece of an outline, mm. */
export interface LineSegment {
  readonly kind: 'line';
  readonly from: Vec2;
  readonly to: Vec2;
}

/** A round piece of an outline, mm. */
export interface ArcSegment {
  readonly kind: 'arc';
  readonly from: Vec2;
  readonly to: Vec2;
  readonly centre: Vec2;
  readonly radius: number;
  readonly sense: 'counter-clockwise' | 'clockwise';
  /** Direction from the centre to `from`, degrees, -180 to 180. */
  readonly startDeg: number;
  /** Angle the arc runs through, degrees, above 0 and below 360. */
  readonly includedDeg: number;
  /** tan of a quarter of the included angle, negative when clockwise. */
  readonly bulge: number;
}

export type Segment = LineSegment | ArcSegment;

/** A kilometre, mm: see `segment`. */
const FLAT_RADIUS = 1 / SAME_POINT;

const DEG = 180 / Math.PI;

/**
 * The segment from one point to another.
 *
 * @param bulge tan of a quarter of the included angle; 0 is a line, and so is an arc of more than a kilometre's radius that leaves its chord by
 * less than 1e-6 mm: its centre is too far off to be reckoned with
 * @example segment([0, 0], [10, 0], Math.tan(Math.PI / 8)) // an arc of radius 7.0710678: chord·(1 + b²)/(4·b)
 */
export function segment(from: Vec2, to: Vec2, bulge: number): Segment {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const chord = Math.hypot(dx, dy);
  const rise = (Math.abs(bulge) * chord) / 2;
  if (bulge === 0 || (rise <= SAME_POINT && chord > 4 * FLAT_RADIUS * Math.abs(bulge)))
    return { kind: 'line', from, to };
  const off = (1 - bulge * bulge) / (4 * bulge);
  const centre: Vec2 = [(from[0] + to[0]) / 2 - dy * off, (from[1] + to[1]) / 2 + dx * off];
  return {
    kind: 'arc',
    from,
    to,
    centre,
    radius: (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    sense: bulge > 0 ? 'counter-clockwise' : 'clockwise',
    startDeg: settledFigure(Math.atan2(from[1] - centre[1], from[0] - centre[0]) * DEG),
    includedDeg: settledFigure(4 * Math.atan(Math.abs(bulge)) * DEG),
    bulge,
  };
}

/** The lines and arcs of an outline, in order; the last runs back to the first vertex. */
export const segments = (profile: Profile): readonly Segment[] =>
  profile.map((vertex, i) => {
    const next = profile[(i + 1) % profile.length]!;
    return segment([vertex.x, vertex.y], [next.x, next.y], vertex.bulge);
  });

/** The arcs of an outline, in order: centre, radius, sense and included angle of each. */
export const arcs = (profile: Profile): readonly ArcSegment[] =>
  segments(profile).filter((piece) => piece.kind === 'arc');

/** The angle an arc runs through, radians, negative when clockwise. */
export const sweep = (arc: ArcSegment): number => 4 * Math.atan(arc.bulge);

/**
 * Whether a point of an arc's circle lies on the arc: it is then on the arc's side of the chord. The ends may fall
 * either way within rounding; a caller that minds compares with `from` and `to` itself.
 */
export function withinArc(arc: ArcSegment, [x, y]: Vec2): boolean {
  const side = (arc.to[0] - arc.from[0]) * (y - arc.from[1]) - (arc.to[1] - arc.from[1]) * (x - arc.from[0]);
  return arc.bulge > 0 ? side <= 0 : side >= 0;
}

/** The point at a fraction 0..1 of a segment's length. */
export function pointAlong(piece: Segment, fraction: number): Vec2 {
  if (piece.kind === 'line')
    return [
      piece.from[0] + (piece.to[0] - piece.from[0]) * fraction,
      piece.from[1] + (piece.to[1] - piece.from[1]) * fraction,
    ];
  const turn = sweep(piece) * fraction;
  const [x, y] = [piece.from[0] - piece.centre[0], piece.from[1] - piece.centre[1]];
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return [piece.centre[0] + x * c - y * s, piece.centre[1] + x * s + y * c];
}

/** The unit direction of travel at a segment's start (0) or end (1). */
export function directionAt(piece: Segment, end: 0 | 1): Vec2 {
  if (piece.kind === 'line') {
    const [dx, dy] = [piece.to[0] - piece.from[0], piece.to[1] - piece.from[1]];
    const size = Math.hypot(dx, dy);
    return [dx / size, dy / size];
  }
  const at = end === 0 ? piece.from : piece.to;
  const turn = piece.bulge > 0 ? 1 : -1;
  return [
    (-(at[1] - piece.centre[1]) / piece.radius) * turn,
    ((at[0] - piece.centre[0]) / piece.radius) * turn,
  ];
}

import type { Vec2 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import { boundsMeet, segmentBounds } from './bounds.js';
import { distanceToSegment } from './distance.js';
import type { ArcSegment, LineSegment, Segment } from './segment.js';

/** A circle and a line (or circle) nearer to tangency than this touch in one point: below it the two crossings are rounding noise. */
const TOUCH = SAME_POINT / 1000;

/**
 * The points two lines or arcs have in common, each once; of a piece they share, its ends.
 *
 * @returns points, mm, within 1e-6 mm of both
 */
export function intersections(a: Segment, b: Segment): readonly Vec2[] {
  if (!boundsMeet(segmentBounds(a), segmentBounds(b), SAME_POINT)) return [];
  const ends = [
    ...[a.from, a.to].filter((point) => distanceToSegment(b, point) <= SAME_POINT),
    ...[b.from, b.to].filter((point) => distanceToSegment(a, point) <= SAME_POINT),
  ];
  const common = crossings(a, b).filter(
    (point) => distanceToSegment(a, point) <= SAME_POINT && distanceToSegment(b, point) <= SAME_POINT,
  );
  const found: Vec2[] = [];
  for (const point of [...ends, ...common]) if (!found.some((other) => same(other, point))) found.push(point);
  return found;
}

const same = (a: Vec2, b: Vec2): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) <= 2 * SAME_POINT;

/** Where the unbounded line or circle of one meets that of the other. */
function crossings(a: Segment, b: Segment): readonly Vec2[] {
  if (a.kind === 'line') return b.kind === 'line' ? lineLine(a, b) : lineCircle(a, b);
  return b.kind === 'line' ? lineCircle(b, a) : circleCircle(a, b);
}

function lineLine(a: LineSegment, b: LineSegment): readonly Vec2[] {
  const [ax, ay] = [a.to[0] - a.from[0], a.to[1] - a.from[1]];
  const [bx, by] = [b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const across = ax * by - ay * bx;
  if (across === 0) return [];
  const t = ((b.from[0] - a.from[0]) * by - (b.from[1] - a.from[1]) * bx) / across;
  return [[a.from[0] + ax * t, a.from[1] + ay * t]];
}

function lineCircle(line: LineSegment, { centre, radius }: ArcSegment): readonly Vec2[] {
  const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]];
  const size = Math.hypot(dx, dy);
  const [ux, uy] = [dx / size, dy / size];
  const along = (centre[0] - line.from[0]) * ux + (centre[1] - line.from[1]) * uy;
  const away = (centre[0] - line.from[0]) * uy - (centre[1] - line.from[1]) * ux;
  return either([line.from[0] + ux * along, line.from[1] + uy * along], [ux, uy], radius, Math.abs(away));
}

function circleCircle(a: ArcSegment, b: ArcSegment): readonly Vec2[] {
  const [dx, dy] = [b.centre[0] - a.centre[0], b.centre[1] - a.centre[1]];
  const apart = Math.hypot(dx, dy);
  if (apart <= SAME_POINT) return [];
  const [ux, uy] = [dx / apart, dy / apart];
  const overlap = Math.min(a.radius + b.radius - apart, apart - Math.abs(a.radius - b.radius));
  if (overlap < -TOUCH) return [];
  const along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const away = overlap < TOUCH ? a.radius : Math.abs(along);
  const foot: Vec2 = [a.centre[0] + ux * along, a.centre[1] + uy * along];
  return either(foot, [-uy, ux], a.radius, away);
}

/** The one or two points at the half chord from the foot of a line `away` from a circle's centre. */
function either(foot: Vec2, along: Vec2, radius: number, away: number): readonly Vec2[] {
  if (away > radius + TOUCH) return [];
  if (away > radius - TOUCH) return [foot];
  const half = Math.sqrt((radius - away) * (radius + away));
  return [
    [foot[0] - along[0] * half, foot[1] - along[1] * half],
    [foot[0] + along[0] * half, foot[1] + along[1] * half],
  ];
}

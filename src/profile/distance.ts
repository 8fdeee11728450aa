import type { Vec2 } from '../frame/index.js';
import type { Profile } from './profile.js';
import { type Segment, segments, withinArc } from './segment.js';

/** Shortest distance from a point to a line or arc, mm. */
export function distanceToSegment(piece: Segment, point: Vec2): number {
  const [px, py] = [point[0] - piece.from[0], point[1] - piece.from[1]];
  if (piece.kind === 'line') {
    const [dx, dy] = [piece.to[0] - piece.from[0], piece.to[1] - piece.from[1]];
    const t = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
    return Math.hypot(px - dx * t, py - dy * t);
  }
  const { centre, radius } = piece;
  const [cx, cy] = [point[0] - centre[0], point[1] - centre[1]];
  const away = Math.hypot(cx, cy);
  if (away === 0) return radius;
  const nearest: Vec2 = [centre[0] + (cx / away) * radius, centre[1] + (cy / away) * radius];
  const ends = Math.min(Math.hypot(px, py), Math.hypot(point[0] - piece.to[0], point[1] - piece.to[1]));
  return withinArc(piece, nearest) ? Math.min(ends, Math.abs(away - radius)) : ends;
}

/** Shortest distance from a point to an outline, mm, whichever side the point is on. */
export const distanceTo = (profile: Profile, point: Vec2): number =>
  segments(profile).reduce((least, piece) => Math.min(least, distanceToSegment(piece, point)), Infinity);

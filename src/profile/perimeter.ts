import type { Profile } from './profile.js';
import { type Segment, segments, sweep } from './segment.js';

/** Length of a line or arc, mm. */
export const segmentLength = (piece: Segment): number =>
  piece.kind === 'line'
    ? Math.hypot(piece.to[0] - piece.from[0], piece.to[1] - piece.from[1])
    : piece.radius * Math.abs(sweep(piece));

/**
 * Length of an outline once round, mm.
 *
 * @example perimeter(obround({ length: 40, width: 10 })) // 91.4159… = π·10 + 2·30
 */
export const perimeter = (profile: Profile): number =>
  segments(profile).reduce((sum, piece) => sum + segmentLength(piece), 0);

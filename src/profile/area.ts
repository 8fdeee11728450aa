import type { Vec2 } from '../frame/index.js';
import type { Profile } from './profile.js';
import { segments, sweep } from './segment.js';

/**
 * Area enclosed by an outline.
 *
 * Lines contribute the shoelace term; an arc adds its circular segment r²(θ − sin θ)/2, signed by its bulge.
 *
 * @returns mm²; positive when the outline runs counter-clockwise
 * @example area(obround({ length: 40, width: 10 })) // 378.5398… = π·10²/4 + 10·30
 */
export function area(profile: Profile): number {
  let round = 0;
  for (const piece of segments(profile)) {
    if (piece.kind === 'line') continue;
    const turn = sweep(piece);
    round += (piece.radius * piece.radius * (turn - Math.sin(turn))) / 2;
  }
  return loopArea(profile.map(({ x, y }) => [x, y])) + round;
}

/** Signed area of a polygon by the shoelace formula, taken from its first point so that far coordinates cost no digits, mm². */
export function loopArea(loop: readonly Vec2[]): number {
  const [x0, y0] = loop[0] ?? [0, 0];
  let doubled = 0;
  for (let i = 1; i + 1 < loop.length; i++) {
    const [a, b] = [loop[i]!, loop[i + 1]!];
    doubled += (a[0] - x0) * (b[1] - y0) - (b[0] - x0) * (a[1] - y0);
  }
  return doubled / 2;
}

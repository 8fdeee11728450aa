import { ProfileError } from '../errors.js';
import type { Vec2 } from '../frame/index.js';
import { SAME_POINT } from '../tolerances.js';
import { circle } from './circle.js';
import type { Profile } from './profile.js';

/**
 * The outline a cutter leaves that moves in a straight line: two sides and two half circles.
 *
 * Four vertices with bulges 0, 1, 0, 1, counter-clockwise; a length equal to the width is a circle of two vertices.
 *
 * @param size length over the round ends and width, mm; `centre` mm; `directionDeg` of the length from X, degrees
 * @throws ProfileError when the width is not above 0 or the length is below the width
 * @example area(obround({ length: 40, width: 10 })) // 378.5398… = π·10²/4 + 10·30
 */
export function obround(size: {
  length: number;
  width: number;
  centre?: Vec2;
  directionDeg?: number;
}): Profile {
  const { length, width, centre = [0, 0], directionDeg = 0 } = size;
  if (!(width > 0) || !(length >= width - SAME_POINT) || !Number.isFinite(length))
    throw new ProfileError(
      'profile-obround',
      (say) =>
        `obround: its length is ${say.fine(length)} and its width ${say.fine(width)}; the width must be more than 0, and the length over the round ends no less than the width: lengthen it or use a smaller cutter`,
    );
  if (length - width < SAME_POINT) return circle({ diameter: width, centre });
  const turn = (directionDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [half, r] = [(length - width) / 2, width / 2];
  const vertex = (x: number, y: number, bulge: number) => ({
    x: centre[0] + x * c - y * s,
    y: centre[1] + x * s + y * c,
    bulge,
  });
  return [vertex(-half, -r, 0), vertex(half, -r, 1), vertex(half, r, 0), vertex(-half, r, 1)];
}

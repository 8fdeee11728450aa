import { ProfileError } from '../errors.js';
import type { Vec2 } from '../frame/index.js';
import type { Profile } from './profile.js';

/**
 * A circle as two half circles, counter-clockwise.
 *
 * @param size diameter and centre (the origin when left out), mm
 * @throws ProfileError when the diameter is not above 0
 * @example area(circle({ diameter: 10 })) // 78.5398…
 */
export function circle(size: { diameter: number; centre?: Vec2 }): Profile {
  const { diameter, centre = [0, 0] } = size;
  if (!(diameter > 0) || !Number.isFinite(diameter))
    throw new ProfileError(
      'profile-circle',
      (say) =>
        `circle: its diameter is ${say.fine(diameter)}; it must be more than 0: give the size of the hole`,
    );
  return [
    { x: centre[0] + diameter / 2, y: centre[1], bulge: 1 },
    { x: centre[0] - diameter / 2, y: centre[1], bulge: 1 },
  ];
}
